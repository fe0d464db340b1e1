import { isAliasIn } from "@/lib/domain/named-in";

const ZIP = "PK";

/** The ways in which a file of text may be written; one that reads it wrongly finds nothing, and another does. */
const WIDE = ["utf-16le", "utf-16be"] as const;
const NARROW = ["utf-8", "windows-1252"] as const;

/** Commas and ends of lines have a zero beside them where two bytes are a letter; no other text has one. */
const LOOKED_AT = 65_536;

/**
 * Whether an uploaded file may hold something of somebody: a text in which an alias stands, and every workbook or archive,
 * which can't be searched without opening it, and whoever uploaded it has it.
 *
 * @param body in base64
 */
export function mayHold(body: string, aliases: readonly string[]): boolean {
  const bytes = Buffer.from(body, "base64");
  if (bytes.subarray(0, 2).toString("latin1") === ZIP) return true;
  const encodings = bytes.subarray(0, LOOKED_AT).includes(0) ? WIDE : NARROW;
  return encodings.some((encoding) => isAliasIn(new TextDecoder(encoding).decode(bytes), aliases));
}
