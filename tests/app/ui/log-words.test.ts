import { describe, expect, it } from "vitest";
import { sayLog, whyNotKept } from "@/app/_ui/family/log-words";
import { familyKeep } from "@/lib/report/family-keep";
import { wordsFor } from "@/lib/words/catalogue";
import { LOG_SOURCE } from "../../lib/report/family-log-fixture";

const keep = familyKeep(wordsFor("en"), LOG_SOURCE);
const log = (over: Partial<Record<"day" | "minutes" | "balls" | "felt", string>>) => ({
  ...{ day: "2026-03-01", minutes: "", balls: "", felt: "" },
  ...over,
});

describe("a kept log", () => {
  it("is said with its day as the page says days, and as it is kept where the page shows that day no more", () => {
    expect(sayLog(keep, log({ minutes: "10", balls: "30", felt: "hard" }))).toBe("Sun 1 Mar: 10 min, 30 balls, hard");
    expect(sayLog(keep, log({ balls: "1", felt: "odd" }))).toBe("Sun 1 Mar: 1 ball");
    expect(sayLog(keep, log({ day: "2026-01-05", minutes: "5" }))).toBe("2026-01-05: 5 min");
  });

  it("is kept within the server's limits, and refused beyond them in the server's words", () => {
    for (const [fields, why] of [
      [{ minutes: "300" }, /^$/],
      [{ balls: "1000" }, /^$/],
      [{ minutes: "301" }, /^That is more than 5 hours/],
      [{ balls: "1001" }, /^That is more than 1000 balls/],
      [{}, /^How many minutes/],
      [{ minutes: "0" }, /^Leave it empty/],
      [{ minutes: "5", balls: "00" }, /^Leave it empty/],
      [{ minutes: "twelve" }, /whole number/],
      [{ minutes: "-5" }, /whole number/],
      [{ minutes: "1e2" }, /whole number/],
      [{ minutes: "５" }, /whole number/],
    ] as const)
      expect([fields, whyNotKept(keep, log(fields))]).toEqual([fields, expect.stringMatching(why)]);
  });
});
