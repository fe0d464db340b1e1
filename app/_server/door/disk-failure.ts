/** What the system says of a file beside the database for which there is no room. */
const FULL_FILES = ["ENOSPC", "EDQUOT"];

/** What kept the disk from taking something. */
export type DiskFailure = "full" | "busy" | "read-only";

/**
 * Why the disk took nothing: it is `full`, which SQLite says by two names, or `busy` for now, or can't be written to at all.
 * Null: something else is wrong. Whatever it is, the transaction was undone.
 */
export function diskFailureOf(error: unknown): DiskFailure | null {
  const code = String((error as { readonly code?: unknown } | null)?.code ?? "");
  if (code === "SQLITE_FULL" || code.startsWith("SQLITE_IOERR") || FULL_FILES.includes(code)) return "full";
  if (code.startsWith("SQLITE_READONLY") || code === "EROFS") return "read-only";
  return code.startsWith("SQLITE_BUSY") ? "busy" : null;
}
