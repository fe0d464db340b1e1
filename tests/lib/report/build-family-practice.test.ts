import { describe, expect, it } from "vitest";
import { buildFamilyPractice } from "@/lib/report/build-family-practice";
import type { FamilyLogSource } from "@/lib/report/family-log-source";
import { wordsFor } from "@/lib/words/catalogue";
import { LOG_SOURCE, TYPED } from "./family-log-fixture";

const words = wordsFor("en");
const valuesOf = (source: FamilyLogSource) =>
  Object.fromEntries(buildFamilyPractice(words, source).form.fields.map(({ name, value }) => [name, value]));

describe("the log on a family's page", () => {
  it("offers today, chosen, and yesterday, by their dates; pain has no answer yet, and the form is shut", () => {
    const { form } = buildFamilyPractice(words, LOG_SOURCE);
    const day = form.fields.find(({ name }) => name === "day");
    expect([day?.value, day?.options.map(({ value, label }) => `${label} ${value}`)]).toEqual([
      "2026-03-01",
      ["today, Sun 1 Mar 2026-03-01", "yesterday, Sat 28 Feb 2026-02-28"],
    ]);
    expect(valuesOf(LOG_SOURCE)).toMatchObject({ hurts: "", minutes: "", place: "" });
    expect([form.hidden, form.open]).toEqual([[{ name: "key", value: "k" }], "shut"]);
  });

  it("comes back as it was typed, open, with what is wrong beside its field; what a tap sent comes back to the tap", () => {
    const { form, tap } = buildFamilyPractice(words, { ...LOG_SOURCE, typed: TYPED });
    expect([form.open, form.refusal, tap?.refusal]).toEqual([
      "open",
      expect.stringContaining("Nothing is saved yet"),
      "",
    ]);
    expect(form.fields.find(({ name }) => name === "minutes")?.error).toBe("Please write a whole number, like 10.");
    expect(valuesOf({ ...LOG_SOURCE, typed: TYPED })).toMatchObject({
      ...{ minutes: "many", hurts: "yes", day: "2026-02-28" },
    });
    const hurts = buildFamilyPractice(words, { ...LOG_SOURCE, typed: { ...TYPED, pain: "saved" } });
    expect(hurts.form.refusal).toBe(
      "That it hurts is saved. Stop, and tell a grown-up today. The minutes and balls are not saved, because of this: Please write a whole number, like 10.",
    );
    const tapped = buildFamilyPractice(words, { ...LOG_SOURCE, typed: { ...TYPED, form: "tap" } });
    expect([tapped.form.open, tapped.form.refusal, tapped.tap?.refusal]).toEqual([
      ...["shut", "", "Please write a whole number, like 10."],
    ]);
    expect(valuesOf({ ...LOG_SOURCE, typed: { ...TYPED, form: "tap" } })).toMatchObject({ minutes: "" });
  });

  it("is the only one, and open, while practice rests", () => {
    const { form, tap } = buildFamilyPractice(words, { ...LOG_SOURCE, practice: "rests" });
    expect([form.open, tap]).toEqual(["open", null]);
  });
});
