import { describe, expect, it } from "vitest";
import { decodeText, FILE_LIMIT_MB } from "@/lib/ingest/decode-text";

const utf8 = (text: string) => new TextEncoder().encode(text);

function utf16(text: string, order: "little" | "big"): Uint8Array {
  const bytes: number[] = order === "little" ? [0xff, 0xfe] : [0xfe, 0xff];
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    bytes.push(...(order === "little" ? [unit & 255, unit >> 8] : [unit >> 8, unit & 255]));
  }
  return Uint8Array.from(bytes);
}

const TEXT = "student,hinge\nZoë 🏌,66\n";

describe("the encodings of a file", () => {
  it.each([
    ["UTF-8", utf8(TEXT), "utf-8"],
    ["UTF-8 with a byte order mark", utf8(`\ufeff${TEXT}`), "utf-8"],
    ["UTF-16 little end first", utf16(TEXT, "little"), "utf-16le"],
    ["UTF-16 big end first", utf16(TEXT, "big"), "utf-16be"],
    ["UTF-16 little end first without a mark", utf16(TEXT, "little").slice(2), "utf-16le"],
    ["UTF-16 big end first without a mark", utf16(TEXT, "big").slice(2), "utf-16be"],
  ])("%s gives the exact names", (_, bytes, encoding) =>
    expect(decodeText(bytes)).toEqual({ kind: "ok", text: TEXT, encoding, choices: [] }),
  );

  it("Windows-1252 gives the exact names, its signs at 0x80 to 0x9f too", () =>
    expect(decodeText(Uint8Array.from([...utf8("name\nZo"), 0xeb, 0x20, 0x80, 0x93, 0x9e]))).toEqual({
      kind: "ok",
      text: "name\nZoë €“ž",
      encoding: "windows-1252",
      choices: [],
    }));

  it("no replacement sign is ever made up", () => {
    for (const bytes of [utf8(TEXT), Uint8Array.from([0x61, 0xff, 0x62]), utf16("ab", "big")]) {
      const decoded = decodeText(bytes);
      expect(decoded.kind === "ok" && decoded.text.includes("\ufffd")).toBe(false);
    }
  });

  it("an upload cut in the middle of a UTF-16 letter is refused", () =>
    expect(decodeText(utf16("abc", "little").slice(0, 7))).toEqual({ kind: "broken-encoding", encoding: "utf-16le" }));

  it("letters are composed and line ends made one", () =>
    expect(decodeText(utf8("Zoe\u0308\r\nb\rc\n"))).toMatchObject({ text: "Zoë\nb\nc\n" }));
});

describe("what is no CSV is known by its content", () => {
  it.each([
    ["a packed file", [0x50, 0x4b, 3, 4, 20, 0], "zip"],
    ["a workbook", [0x50, 0x4b, 3, 4, ...utf8("....[Content_Types].xml")], "workbook"],
    ["an old workbook", [0xd0, 0xcf, 0x11, 0xe0, 0xa1], "old-workbook"],
    ["a PDF", [...utf8("%PDF-1.7")], "pdf"],
    ["a picture", [0x89, 0x50, 0x4e, 0x47, 13, 10], "image"],
    ["another picture", [0xff, 0xd8, 0xff, 0xe0], "image"],
    ["a web page", [...utf8("\n<!DOCTYPE html><html>")], "html"],
    ["mere bytes", Array.from({ length: 64 }, (_, at) => at % 8), "binary"],
  ])("%s", (_, bytes, what) => expect(decodeText(Uint8Array.from(bytes))).toEqual({ kind: "foreign", what }));

  it.each(["", "\n\n", " \t "])("%j is empty", (text) => expect(decodeText(utf8(text))).toEqual({ kind: "empty" }));

  it("a file over the limit names the limit", () =>
    expect(decodeText(new Uint8Array(FILE_LIMIT_MB * 1024 * 1024 + 1))).toEqual({
      kind: "too-big",
      limit: 32,
      size: 33,
    }));
});
