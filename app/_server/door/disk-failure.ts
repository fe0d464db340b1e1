/**
 * Why the disk took nothing: it is `full`, which SQLite says by two names, or `busy`, or closed for writing, for now. Null:
 * something else is wrong. Whatever it is, the transaction was undone.
 */
export function diskFailureOf(error: unknown): "full" | "busy" | null {
  const code = String((error as { readonly code?: unknown } | null)?.code ?? "");
  if (code === "SQLITE_FULL" || code.startsWith("SQLITE_IOERR")) return "full";
  return code.startsWith("SQLITE_BUSY") || code.startsWith("SQLITE_READONLY") ? "busy" : null;
}
