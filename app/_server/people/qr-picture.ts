import { encode } from "uqr";

/** Light squares around a picture of this kind: fewer, and a phone may not find it (ISO/IEC 18004, from memory). */
const QUIET_SQUARES = 4;

/** A text as squares that a phone reads: one SVG path of the dark ones, in a square of `size`. Throws on a text too long for it. */
export function qrPicture(text: string): { readonly path: string; readonly size: number } {
  const { data } = encode(text, { ecc: "M", border: QUIET_SQUARES });
  const path = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join("");
  return { path, size: data.length };
}
