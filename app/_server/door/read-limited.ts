/** The body of a request; `too-big`: over the limit, and not read further; `broken`: it broke off. */
export type LimitedBody =
  | { readonly kind: "ok"; readonly bytes: Uint8Array }
  | { readonly kind: "too-big" }
  | { readonly kind: "broken" };

/** Reads a body up to so many bytes, whatever length it states. */
export async function readLimited(request: Request, limit: number): Promise<LimitedBody> {
  const stated = request.headers.get("content-length");
  if (Number(stated ?? "0") > limit) return { kind: "too-big" };
  const reader = request.body?.getReader();
  if (!reader) return { kind: "ok", bytes: new Uint8Array() };
  const parts: Uint8Array[] = [];
  let size = 0;
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      size += next.value.byteLength;
      if (size > limit) {
        await reader.cancel();
        return { kind: "too-big" };
      }
      parts.push(next.value);
    }
  } catch {
    return { kind: "broken" };
  }
  if (stated !== null && size !== Number(stated)) return { kind: "broken" };
  return { kind: "ok", bytes: Buffer.concat(parts) };
}
