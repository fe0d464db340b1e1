/** Largest file that is read. */
export const FILE_LIMIT_MB = 32;

/** What a file is by its first bytes, where it is no text. */
export type ForeignKind = "workbook" | "zip" | "html" | "image" | "pdf" | "binary";

export type DecodedText =
  | {
      readonly kind: "ok";
      readonly text: string;
      readonly encoding: "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";
    }
  | { readonly kind: "too-big"; readonly limit: number; readonly size: number }
  | { readonly kind: "empty" }
  | { readonly kind: "foreign"; readonly what: ForeignKind }
  | { readonly kind: "broken-encoding"; readonly encoding: string };

/** Signs of Windows-1252 at 0x80 to 0x9F. Node's own decoder of that name gives control signs there. */
const WINDOWS_1252 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

const SIGNATURES: readonly { readonly what: ForeignKind; readonly bytes: readonly number[] }[] = [
  { what: "zip", bytes: [0x50, 0x4b, 0x03, 0x04] },
  { what: "zip", bytes: [0x50, 0x4b, 0x05, 0x06] },
  { what: "zip", bytes: [0x1f, 0x8b] },
  { what: "workbook", bytes: [0xd0, 0xcf, 0x11, 0xe0] },
  { what: "pdf", bytes: [0x25, 0x50, 0x44, 0x46, 0x2d] },
  { what: "image", bytes: [0x89, 0x50, 0x4e, 0x47] },
  { what: "image", bytes: [0xff, 0xd8, 0xff] },
  { what: "image", bytes: [0x47, 0x49, 0x46, 0x38] },
  { what: "image", bytes: [0x52, 0x49, 0x46, 0x46] },
];

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return bytes.length >= signature.length && signature.every((byte, at) => bytes[at] === byte);
}

function foreignKind(bytes: Uint8Array): ForeignKind | null {
  const found = SIGNATURES.find((entry) => startsWith(bytes, entry.bytes));
  if (!found) return null;
  // A workbook is a zip whose first entries name its parts.
  const head = found.what === "zip" ? fromWindows1252(bytes.subarray(0, 4096)) : "";
  return /\[Content_Types\]\.xml|xl\/|mimetypeapplication\/vnd\./.test(head) ? "workbook" : found.what;
}

function fromWindows1252(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let start = 0; start < bytes.length; start += 8192) {
    parts.push(String.fromCharCode(...bytes.subarray(start, start + 8192)));
  }
  return parts.join("").replace(/[\u0080-\u009f]/g, (sign) => WINDOWS_1252[sign.charCodeAt(0) - 0x80] ?? sign);
}

function decodeStrictly(bytes: Uint8Array, encoding: string): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** The text of an uploaded file, composed (NFC), line ends as one newline; or why it is no text of ours. */
export function decodeText(bytes: Uint8Array): DecodedText {
  if (bytes.length > FILE_LIMIT_MB * 1024 * 1024) {
    return { kind: "too-big", limit: FILE_LIMIT_MB, size: Math.ceil(bytes.length / 1024 / 1024) };
  }
  const what = foreignKind(bytes);
  if (what) return { kind: "foreign", what };
  const utf16 = startsWith(bytes, [0xff, 0xfe]) ? "utf-16le" : startsWith(bytes, [0xfe, 0xff]) ? "utf-16be" : null;
  if (utf16) {
    const text = decodeStrictly(bytes, utf16);
    return text === null ? { kind: "broken-encoding", encoding: utf16 } : finish(text, utf16);
  }
  const text = decodeStrictly(bytes, "utf-8");
  return text === null ? finish(fromWindows1252(bytes), "windows-1252") : finish(text, "utf-8");
}

function finish(raw: string, encoding: "utf-8" | "utf-16le" | "utf-16be" | "windows-1252"): DecodedText {
  const text = raw.normalize("NFC").replace(/\r\n?/g, "\n");
  if (text.trim() === "") return { kind: "empty" };
  if (/^\s*<(?:!doctype|html|head|body|table|\?xml|svg|script)\b/i.test(text.slice(0, 2000))) {
    return { kind: "foreign", what: "html" };
  }
  const head = text.slice(0, 4000);
  const strange = head.match(/(?![\t\n])\p{Cc}|\ufffd/gu)?.length ?? 0;
  if (strange > Math.max(8, head.length / 20)) return { kind: "foreign", what: "binary" };
  return { kind: "ok", text, encoding };
}
