import { expect, test } from "vitest";
import { foldText } from "@/lib/domain/fold-text";

test("case and marks don't matter to a search, and letters that stand for two find both", () => {
  expect(foldText("ZOË")).toBe("zoe");
  expect(foldText("Åse")).toBe("ase");
  expect(foldText("Ase\u030a")).toBe("ase");
  expect(foldText("Straße")).toBe("strasse");
  expect(foldText("Øyvind Łukasz")).toBe("oyvind lukasz");
  expect(foldText("İpek")).toBe("ipek");
  expect(foldText("ＡＢ")).toBe("ab");
});

test("folding twice is folding once, also where marks stand alone", () => {
  for (const text of ["", "́", "ÅÄÖ", "æther", "日本", "ΆΣ"]) expect(foldText(foldText(text))).toBe(foldText(text));
});
