import { decodeAs, type EncodingChoice, fromWindows1252, guessEncodings } from "./guess-encoding";

/** Largest file that is read. */
export const FILE_LIMIT_MB = 32;

/** What a file is by its first bytes, where it is no text. */
export type ForeignKind = "workbook" | "old-workbook" | "sheets" | "zip" | "html" | "image" | "pdf" | "binary";

export type DecodedText =
  | {
      readonly kind: "ok";
      readonly text: string;
      readonly encoding: string;
      /** Ways to read the letters when the bytes don't settle it; `text` is by the first, or by the one chosen. */
      readonly choices: readonly EncodingChoice[];
    }
  | { readonly kind: "too-big"; readonly limit: number; readonly size: number }
  | { readonly kind: "empty" }
  | { readonly kind: "foreign"; readonly what: ForeignKind }
  | { readonly kind: "broken-encoding"; readonly encoding: string };

const SIGNATURES: readonly { readonly what: ForeignKind; readonly bytes: readonly number[] }[] = [
  { what: "zip", bytes: [0x50, 0x4b, 0x03, 0x04] },
  { what: "zip", bytes: [0x50, 0x4b, 0x05, 0x06] },
  { what: "zip", bytes: [0x1f, 0x8b] },
  { what: "old-workbook", bytes: [0xd0, 0xcf, 0x11, 0xe0] },
  { what: "pdf", bytes: [0x25, 0x50, 0x44, 0x46, 0x2d] },
  { what: "image", bytes: [0x89, 0x50, 0x4e, 0x47] },
  { what: "image", bytes: [0xff, 0xd8, 0xff] },
  { what: "image", bytes: [0x47, 0x49, 0x46, 0x38] },
  { what: "image", bytes: [0x52, 0x49, 0x46, 0x46] },
];

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return bytes.length >= signature.length && signature.every((byte, at) => bytes[at] === byte);
}

/** What a file is by its content when that is no text; null: nothing that is known. */
export function foreignKind(bytes: Uint8Array): ForeignKind | null {
  const found = SIGNATURES.find((entry) => startsWith(bytes, entry.bytes));
  if (!found) return null;
  if (found.what !== "zip") return found.what;
  // A workbook is a zip that names its parts, in its first bytes or in the directory at its end.
  const names = fromWindows1252(bytes.subarray(0, 4096)) + fromWindows1252(bytes.subarray(-65_536));
  if (/\[Content_Types\]\.xml|xl\/workbook\.xml/.test(names)) return "workbook";
  return /mimetypeapplication\/vnd\./.test(names) ? "sheets" : "zip";
}

/** The order of bytes of a text in UTF-16 that has no mark: every other byte of Latin letters is nought. */
function unmarkedUtf16(bytes: Uint8Array): "utf-16le" | "utf-16be" | null {
  const head = bytes.subarray(0, 4000);
  if (head.length < 4 || bytes.length % 2 === 1) return null;
  const noughts = [0, 0];
  for (let at = 0; at < head.length; at++) if (head[at] === 0) noughts[at % 2] = (noughts[at % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = noughts;
  const most = head.length / 2;
  return odd > 0.6 * most && even === 0 ? "utf-16le" : even > 0.6 * most && odd === 0 ? "utf-16be" : null;
}

/**
 * The text of an uploaded file, composed (NFC), line ends as one newline; or why it is no text of ours.
 *
 * @param chosen the encoding that somebody chose among the choices; anything else is passed over
 */
export function decodeText(bytes: Uint8Array, chosen: string | null = null): DecodedText {
  if (bytes.length > FILE_LIMIT_MB * 1024 * 1024) {
    return { kind: "too-big", limit: FILE_LIMIT_MB, size: Math.ceil(bytes.length / 1024 / 1024) };
  }
  const what = foreignKind(bytes);
  if (what) return { kind: "foreign", what };
  const utf16 = startsWith(bytes, [0xff, 0xfe])
    ? "utf-16le"
    : startsWith(bytes, [0xfe, 0xff])
      ? "utf-16be"
      : unmarkedUtf16(bytes);
  if (utf16) {
    const text = decodeAs(bytes, utf16);
    return text === null ? { kind: "broken-encoding", encoding: utf16 } : finish(text, utf16, []);
  }
  const text = decodeAs(bytes, "utf-8");
  if (text !== null) return finish(text, "utf-8", []);
  const choices = guessEncodings(bytes);
  const taken = choices.find(({ encoding }) => encoding === chosen) ?? choices[0];
  const read = taken ? decodeAs(bytes, taken.encoding) : null;
  return taken && read !== null
    ? finish(read, taken.encoding, choices.length > 1 ? choices : [])
    : { kind: "foreign", what: "binary" };
}

function finish(raw: string, encoding: string, choices: readonly EncodingChoice[]): DecodedText {
  const text = raw.normalize("NFC").replace(/\r\n?/g, "\n");
  if (text.trim() === "") return { kind: "empty" };
  if (/^\s*<(?:!doctype|html|head|body|table|\?xml|svg|script)\b/i.test(text.slice(0, 2000))) {
    return { kind: "foreign", what: "html" };
  }
  const head = text.slice(0, 4000);
  const strange = head.match(/(?![\t\n])\p{Cc}|\ufffd/gu)?.length ?? 0;
  if (strange > Math.max(8, head.length / 20)) return { kind: "foreign", what: "binary" };
  return { kind: "ok", text, encoding, choices };
}
