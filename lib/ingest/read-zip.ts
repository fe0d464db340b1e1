import { Inflate } from "fflate";
import { PART_LIMIT, RATIO_FROM, RATIO_LIMIT, UNPACKED_LIMIT } from "./workbook-limits";

/** Why an archive is not opened; message `import.issue.workbook` chooses by it. */
export type ZipFault = "broken" | "locked" | "many-parts" | "odd-names" | "ratio" | "large" | "lying";

interface Entry {
  readonly name: string;
  readonly method: number;
  readonly packed: number;
  readonly unpacked: number;
  readonly crc: number;
  readonly at: number;
}

export type OpenedZip =
  | {
      readonly kind: "ok";
      readonly names: readonly string[];
      /** The unpacked bytes of a part, held against its stated size and checksum; null: there is none of that name. */
      open(name: string): Uint8Array | ZipFault | null;
    }
  | { readonly kind: "refused"; readonly why: ZipFault };

const END = 0x06054b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
const END_LENGTH = 22;
const LONGEST_COMMENT = 65_535;

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  return sum;
});

function crcOf(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (let at = 0; at < bytes.length; at++) sum = (CRC_TABLE[(sum ^ (bytes[at] ?? 0)) & 255] ?? 0) ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}

function isOddName(name: string): boolean {
  return name === "" || /[\\\p{Cc}]|^\/|^[a-z]:/iu.test(name) || name.split("/").some((part) => part === "..");
}

/** Where the directory's end record stands; null: there is none, so it is no whole archive. */
function findEnd(view: DataView): number | null {
  const last = view.byteLength - END_LENGTH;
  for (let at = last; at >= 0 && at >= last - LONGEST_COMMENT; at--) {
    if (view.getUint32(at, true) === END && at + END_LENGTH + view.getUint16(at + 20, true) === view.byteLength)
      return at;
  }
  return null;
}

function readEntries(bytes: Uint8Array, view: DataView): readonly Entry[] | ZipFault {
  const end = findEnd(view);
  if (end === null) return "broken";
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  // A count or place of all ones stands for an archive larger than any that is read here.
  if (count > PART_LIMIT) return "many-parts";
  const entries: Entry[] = [];
  const seen = new Set<string>();
  const text = new TextDecoder();
  for (let index = 0; index < count; index++) {
    if (at + 46 > end || view.getUint32(at, true) !== CENTRAL) return "broken";
    const nameLength = view.getUint16(at + 28, true);
    const name = text.decode(bytes.subarray(at + 46, at + 46 + nameLength));
    const key = name.toLowerCase();
    if (isOddName(name) || seen.has(key)) return "odd-names";
    seen.add(key);
    if (view.getUint16(at + 8, true) & 1) return "locked";
    entries.push({
      name,
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packed: view.getUint32(at + 20, true),
      unpacked: view.getUint32(at + 24, true),
      at: view.getUint32(at + 42, true),
    });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

/** Unpacks a part and stops as soon as it grows beyond what the directory says of it. */
function unpack(bytes: Uint8Array, view: DataView, entry: Entry): Uint8Array | ZipFault {
  const { at, packed, unpacked, method } = entry;
  if (at + 30 > bytes.length || view.getUint32(at, true) !== LOCAL) return "broken";
  const from = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  if (from + packed > bytes.length) return "broken";
  const body = bytes.subarray(from, from + packed);
  let whole: Uint8Array;
  if (method === 0) whole = body;
  else if (method === 8) {
    whole = new Uint8Array(unpacked);
    let size = 0;
    const inflate = new Inflate((part) => {
      if (size + part.length > unpacked) throw new RangeError("more than stated");
      whole.set(part, size);
      size += part.length;
    });
    try {
      // In stretches, so that a lying part is stopped near its stated size.
      for (let start = 0; start < body.length; start += 65_536)
        inflate.push(body.subarray(start, start + 65_536), start + 65_536 >= body.length);
    } catch (error) {
      return error instanceof RangeError ? "lying" : "broken";
    }
    if (size !== unpacked) return "lying";
  } else return "broken";
  if (whole.length !== unpacked) return "lying";
  return crcOf(whole) === entry.crc ? whole : "broken";
}

/**
 * Opens a zip archive by its directory and refuses what no program for sheets writes: too many parts, doubled names or
 * names that leave the archive, locked parts, parts that grow without measure. Nothing is unpacked before all of it is
 * seen.
 *
 * @param wanted whether a part may be opened at all; only such parts count towards the size
 */
export function readZip(bytes: Uint8Array, wanted: (name: string) => boolean): OpenedZip {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const entries = readEntries(bytes, view);
  if (typeof entries === "string") return { kind: "refused", why: entries };
  const kept = entries.filter(({ name }) => wanted(name));
  if (kept.some(({ packed, unpacked }) => unpacked > RATIO_FROM && unpacked > RATIO_LIMIT * packed))
    return { kind: "refused", why: "ratio" };
  if (kept.reduce((sum, { unpacked }) => sum + unpacked, 0) > UNPACKED_LIMIT) return { kind: "refused", why: "large" };
  const byName = new Map(kept.map((entry) => [entry.name, entry]));
  return {
    kind: "ok",
    names: entries.map(({ name }) => name),
    open(name) {
      const entry = byName.get(name);
      return entry ? unpack(bytes, view, entry) : null;
    },
  };
}
