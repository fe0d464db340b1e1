import { describe, expect, it } from "vitest";
import { buildInherit } from "@/lib/report/build-inherit";
import type { SeasonPage, SeasonRow } from "@/lib/report/page-model";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");

const row = (fundamentalId: string, place: SeasonRow["place"]): SeasonRow => ({
  ...{
    fundamentalId,
    href: `/students/s1/${fundamentalId}`,
    name: fundamentalId,
    place,
    glyph: "open",
    word: "Not settled",
  },
  ...{ text: "Twelve films.", chart: {} as SeasonRow["chart"] },
  facts: [{ name: "Level now", value: "82 ± 2°", note: "" }],
});

const empty = {
  title: "Nia: hinge is in hand",
  notices: ["Away since May."],
  next: { margin: "", heading: "Work on the hinge", text: "It lies outside.", alters: "" },
  proved: { margin: "Proved", heading: "Nothing new", items: [], empty: "Nothing was proved yet." },
  evidence: { groups: [] },
  settle: null,
} as unknown as SeasonPage;

describe("buildInherit", () => {
  it("says every fundamental with its place, its figures and its words, and leads to its page", () => {
    const evidence = { groups: [{ label: "", rows: [row("hinge", "in-hand"), row("head-drift", "waits")] }] };
    const [standing] = buildInherit(words, { ...empty, evidence } as unknown as SeasonPage, "s1");
    expect(standing?.table?.rows.map(({ cells, href, tone }) => [cells.join(" | "), href, tone])).toEqual([
      ["hinge | in hand | Level now: 82 ± 2° | Not settled | Twelve films.", "/students/s1/hinge", "plain"],
      ["head-drift | waits | Level now: 82 ± 2° | Not settled | Twelve films.", "/students/s1/head-drift", "quiet"],
    ]);
    expect(standing?.paragraphs).toEqual(["Work on the hinge", "It lies outside.", "Away since May."]);
  });

  it("says that nothing was measured, and what is proved or not, in the words of the season page", () => {
    const [standing, proved] = buildInherit(words, empty, "s1");
    expect([standing?.table, standing?.paragraphs.at(-1)]).toEqual([null, "Nothing was measured yet."]);
    expect(proved?.paragraphs).toEqual(["Nothing was proved yet."]);
    const items = [{ glyph: "gain", heading: "Real gain: hinge", text: "It holds.", href: "/" }];
    const made = buildInherit(words, { ...empty, proved: { ...empty.proved, items } } as unknown as SeasonPage, "s1");
    expect(made[1]?.paragraphs).toEqual(["Real gain: hinge It holds."]);
    expect(made).toHaveLength(2);
  });
});
