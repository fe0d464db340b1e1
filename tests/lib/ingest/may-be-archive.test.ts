import { expect, it } from "vitest";
import { isZip, mayBeArchive } from "@/lib/ingest/may-be-archive";

const bytes = (text: string) => new TextEncoder().encode(text);

it.each([
  ["a zip", Uint8Array.of(0x50, 0x4b, 3, 4, 20), true],
  ["an object", bytes('{"format":"x"}'), true],
  ["an object after blanks and a mark of byte order", bytes('\uFEFF \n\t{"a":1}'), true],
  ["a list", bytes('[{"a":1}]'), false],
  ["a table", bytes("student,date\nNia,2026-01-02\n"), false],
  ["a brace that comes later", bytes('student,{"a":1}'), false],
  ["nothing", bytes(""), false],
  ["an object after more than 64 blanks", bytes(`${" ".repeat(65)}{}`), false],
])("%s may be an archive: %#", (_what, file, may) => {
  expect(mayBeArchive(file)).toBe(may);
});

it("a zip is told by its first four bytes, an empty zip of none has others", () => {
  expect(isZip(Uint8Array.of(0x50, 0x4b, 3, 4))).toBe(true);
  expect(isZip(Uint8Array.of(0x50, 0x4b, 5, 6))).toBe(false);
  expect(isZip(Uint8Array.of(0x50, 0x4b, 3))).toBe(false);
});
