import { type ForeignKind, foreignKind } from "./decode-text";
import { ARCHIVE_ENTRY } from "./read-archive";

/** So many bytes tell what a file is. */
const HEAD_BYTES = 4096;

/** What an upload is by its content; `table`: it may hold one, or be an academy's archive. */
export type UploadKind = "table" | "empty" | ForeignKind;

/**
 * What an upload is, by its first bytes and not by its name. Looks at so little that the server's thread can do it;
 * whether a table is sound is found out later, beside that thread.
 */
export function uploadKind(bytes: Uint8Array): UploadKind {
  const head = bytes.subarray(0, HEAD_BYTES);
  if (bytes.length === 0 || (bytes.length <= HEAD_BYTES && head.every((byte) => byte <= 32))) return "empty";
  const what = foreignKind(bytes);
  if (what !== null && what !== "workbook" && !(what === "zip" && namesArchive(bytes))) return what;
  if (what !== null) return "table";
  const text = new TextDecoder("latin1").decode(head);
  return /^\s*(?:\u00ef\u00bb\u00bf)?\s*<(?:!doctype|html|head|body|table|\?xml|svg|script)\b/i.test(text)
    ? "html"
    : "table";
}

/** The directory stands at an archive's end and names its parts. */
function namesArchive(bytes: Uint8Array): boolean {
  return new TextDecoder("latin1").decode(bytes.subarray(-65_536)).includes(ARCHIVE_ENTRY);
}
