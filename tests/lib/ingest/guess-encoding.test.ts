import { describe, expect, it } from "vitest";
import { guessEncodings } from "@/lib/ingest/guess-encoding";
import { encodeAs } from "./encode-as";
import { readFile } from "./import-setup";

const names = (text: string, encoding: string) => guessEncodings(encodeAs(text, encoding));

describe("which letters are meant", () => {
  it.each([
    ["Zoë, José, Müller, “Bea” – 12°", "windows-1252"],
    ["Łukasz,1\nŠárka,2\nMiloš", "windows-1250"],
    ["Łukasz,1\nŠárka,2\nMiloš", "iso-8859-2"],
    ["Сергей,1\nАнна,2", "windows-1251"],
    ["Сергей,1\nАнна,2", "koi8-r"],
    ["Γιώργος,1\nΕλένη,2", "windows-1253"],
    ["José,1\nZoë,2", "macintosh"],
  ])("%s in %s is settled: only one reading makes words", (text, encoding) => {
    expect(names(text, encoding).map((choice) => choice.encoding)).toEqual([encoding]);
  });

  it("a name at the very end of a long file counts as much as one at its beginning", () => {
    const text = `${"Zoë,1\n".repeat(100_000)}Łukasz,2\n`;
    expect(names(text.replaceAll("Zoë", "Zoe"), "windows-1250").map((choice) => choice.encoding)).toEqual([
      "windows-1250",
    ]);
  });

  it("è or č: both make names, so both are shown", () => {
    expect(names("Chloè,1\nBjörk,2", "windows-1252")).toEqual([
      { encoding: "windows-1252", sample: "Chloè, Björk" },
      { encoding: "windows-1250", sample: "Chloč, Björk" },
    ]);
  });

  it("ş, ð or đ: three readings, the true one among them", () => {
    expect(names("Şule,1\nDoğan,2", "windows-1254")).toContainEqual({
      encoding: "windows-1254",
      sample: "Şule, Doğan",
    });
  });
});

describe("a file whose letters can be read in two ways", () => {
  const bytes = encodeAs("student,date,club,swing,hinge\nChloè,2026-03-08,7-iron,1,66\n", "windows-1252");
  it("is asked about, and nothing of it is taken meanwhile", () => {
    const preview = readFile(bytes);
    expect(preview.questions.map(({ id, options }) => [id, options.map((option) => option.args.sample)])).toEqual([
      ["encoding", ["Chloè", "Chloč"]],
    ]);
    expect([preview.plan, preview.restRows, preview.waitingRows]).toEqual([null, [2], [2]]);
  });
  it("is read as answered", () => {
    const ask = (encoding: string) =>
      readFile(bytes, { "answer:encoding": encoding }).questions.find(({ code }) => code === "student-unknown")?.args
        .value;
    expect([ask("windows-1252"), ask("windows-1250")]).toEqual(["Chloè", "Chloč"]);
  });
});
