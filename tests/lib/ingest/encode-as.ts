import { fromWindows1252 } from "@/lib/ingest/guess-encoding";

/** A text's bytes in an encoding of one byte a letter, by asking the decoder for every byte. */
export function encodeAs(text: string, encoding: string): Uint8Array {
  const bytes = Array.from({ length: 256 }, (_, byte) => byte);
  const letters = new Map(
    bytes.map((byte) => {
      const one = Uint8Array.of(byte);
      return [encoding === "windows-1252" ? fromWindows1252(one) : new TextDecoder(encoding).decode(one), byte];
    }),
  );
  return Uint8Array.from(text, (letter) => {
    const byte = letters.get(letter);
    if (byte === undefined) throw new Error(`no ${letter} in ${encoding}`);
    return byte;
  });
}
