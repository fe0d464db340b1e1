import { expect, it } from "vitest";
import { wordsFor } from "@/lib/words/catalogue";
import { sayDifference, sayReadingSd, sayTypicalError } from "@/lib/words/say-reading";

const words = wordsFor("en");

it("an error has a tenth, and a hundredth where a tenth would say 0", () => {
  expect([sayReadingSd(words, 1.26, "deg"), sayReadingSd(words, 0.029, "deg")]).toEqual(["1.3°", "0.03°"]);
  expect(sayTypicalError(words, { typical: 1.04, low: 0.72, high: 1.9 }, "pct-stance")).toBe(
    "1.0\u00a0%, 0.7 to 1.9\u00a0%",
  );
});
it("a difference has its sign and half of its interval", () => {
  expect(sayDifference(words, { value: -0.24, low: -0.74, high: 0.26 }, "deg")).toBe("−0.2\u00a0±\u00a00.5°");
  expect(sayDifference(words, { value: 0, low: -1, high: 1 }, "deg")).toBe("0.0\u00a0±\u00a01.0°");
});
