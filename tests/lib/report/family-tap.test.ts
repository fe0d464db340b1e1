import { describe, expect, it } from "vitest";
import { buildFamilyPractice } from "@/lib/report/build-family-practice";
import type { FamilyLogSource } from "@/lib/report/family-log-source";
import { familyTap } from "@/lib/report/family-tap";
import { wordsFor } from "@/lib/words/catalogue";
import { LOG_SOURCE, TYPED } from "./family-log-fixture";

const words = wordsFor("en");
const place = buildFamilyPractice(words, LOG_SOURCE).form.fields.find(({ name }) => name === "place");
const tap = (source: Partial<FamilyLogSource> = {}) => {
  if (!place) throw new Error("no list of places");
  return familyTap(words, { ...LOG_SOURCE, ...source }, place);
};

describe("the buttons of one tap", () => {
  it("have the minutes of the dose, with the name on each, for today, and no answer about pain beforehand", () => {
    expect(tap({ minutes: 20 }).tap).toMatchObject({
      ...{ action: "/api/family/page/practice", refusal: "", day: "Today, Sun 1 Mar" },
      hidden: [
        { name: "key", value: "k" },
        { name: "day", value: "2026-03-01" },
        { name: "tap", value: "yes" },
      ],
      buttons: [
        { value: "10", said: "10 min", whom: "for Dot" },
        { value: "20", said: "20 min", whom: "for Dot" },
        { value: "30", said: "30 min", whom: "for Dot" },
      ],
      hurts: { value: "", options: [{ value: "no" }, { value: "yes" }] },
    });
  });

  it("give way to “stop” with the place on a yes, and are not there while practice rests", () => {
    expect(tap().tap?.stop).toMatchObject({
      heading: "Stop",
      lines: ["No practice now. Tell a grown-up today.", expect.stringContaining("Grown-ups:")],
      place: { label: "Where does it hurt?", value: "" },
    });
    expect(tap({ practice: "rests" })).toEqual({
      tap: null,
      rests: "The quick buttons come back when practice goes on again.",
    });
  });

  it("say why a tap was refused: pain unanswered, a day that has passed, too much, or that pain was saved all the same", () => {
    const typed = (errors: Readonly<Record<string, string>>, more: Partial<typeof TYPED> = {}) =>
      tap({ typed: { ...TYPED, form: "tap", errors, ...more } }).tap?.refusal;
    expect(typed({ hurts: "Please say." })).toBe("Please say.");
    expect(typed({ day: "Choose." })).toBe("A new day has begun since this page was opened. Please tap once more.");
    expect(typed({ minutes: "Too much." }, { pain: "saved" })).toContain("That it hurts is saved.");
    expect(tap({ typed: TYPED }).tap?.refusal).toBe("");
  });
});
