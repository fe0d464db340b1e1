import { describe, expect, it } from "vitest";
import { buildFamilyPage } from "@/lib/report/build-family";
import type { FamilySource } from "@/lib/report/family-source";
import { wordsFor } from "@/lib/words/catalogue";
import { FAMILY_SOURCE, filmed, practised } from "./family-fixture";

const words = wordsFor("en");
const page = (over: Partial<FamilySource>) => buildFamilyPage(words, { ...FAMILY_SOURCE, ...over });

describe("a family's page", () => {
  it("tells the story as it is built for every way of telling", () => {
    const story = {
      ...FAMILY_SOURCE.story,
      ...{
        heading: "Dot’s grip is better",
        good: "16 weeks now.",
        alsoGood: ["Your last video was good to use."],
        changed: ["Better.", "Old."],
      },
      changedMarks: ["gain", null] as const,
      ...{ unsure: "Two more videos.", contact: "Solid.", rest: ["The same."] },
    };
    const shown = page({ story, videos: filmed("+") });
    expect([shown.title, shown.seen]).toEqual(["Dot’s grip is better", "Last video: Mon 10 Aug"]);
    expect(shown.good.lines).toEqual(["16 weeks now.", "Your last video was good to use."]);
    expect(shown.told).toEqual([
      { glyph: "gain", line: "Better." },
      { glyph: null, line: "Old." },
      { glyph: "open", line: "Two more videos." },
      { glyph: null, line: "Solid." },
    ]);
    expect(shown.more).toEqual(["The same."]);
  });

  it("with nothing on file says so, and has no part without a line", () => {
    const empty = page({});
    expect(empty.good.lines).toEqual(["There is nothing to tell yet."]);
    expect([empty.told, empty.stop, empty.more, empty.seen]).toEqual([[], null, [], ""]);
    expect(empty.task?.heading).toBe("No task just now");
  });

  it("shows the practice of the last seven days, today among them, and none of pain alone", () => {
    const practice = [
      practised("2026-09-06"),
      practised("2026-09-12", { id: "a" }),
      practised("2026-09-12", { id: "b", minutes: null, balls: 30 }),
      practised("2026-09-11", { minutes: null, pain: "knee" }),
    ];
    expect(page({ practice }).practice.week.map(({ spoken }) => spoken)).toEqual([
      "Sun 6 Sep: 10 minutes",
      "Mon 7 Sep: –",
      "Tue 8 Sep: –",
      "Wed 9 Sep: –",
      "Thu 10 Sep: –",
      "Fri 11 Sep: –",
      "Sat 12 Sep: 10 minutes; 30 balls",
    ]);
  });

  it("asks for no video while something hurts", () => {
    expect(page({}).filming).toBe(FAMILY_SOURCE.look.filming);
    expect(page({ practice: [practised("2026-09-12", { minutes: null, pain: "knee" })] }).filming).toBeNull();
  });

  it("bears the alias at its head and on each button of practice, and nothing of it in addresses", () => {
    const shown = page({
      practice: [practised("2026-09-12"), practised("2026-09-12", { id: "x", pain: "foot", minutes: null })],
    });
    const presses = [shown.stop?.over, ...shown.practice.undo];
    expect(shown.title).toContain("Dot");
    for (const label of [...presses.map((press) => press?.label), shown.practice.form.submit])
      expect(label).toContain("Dot");
    for (const address of [...presses.map((press) => press?.action), shown.practice.form.action])
      expect(address).toMatch(/^\/api\/family\/page\//);
  });

  it("for the youngest begins with fun", () => {
    const young = { ...FAMILY_SOURCE.student, birthYear: 2019 };
    expect(page({ student: young }).good.lines).toEqual([
      "Hit balls and have fun: that comes first.",
      "There is nothing to tell yet.",
    ]);
  });
});
