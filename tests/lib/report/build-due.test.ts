import { describe, expect, it } from "vitest";
import { orderedFundamentals } from "@/lib/domain/catalogue";
import { buildDuePage, type DueFilm } from "@/lib/report/build-due";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const body = {
  fundamentals: [
    { id: "hinge", swings: 5 },
    { id: "foot-line", swings: 3 },
  ],
  views: ["face-on" as const],
  care: [],
};
const film = (change: Partial<DueFilm> = {}): DueFilm => ({
  ...{ planId: "p1", studentId: "s1", alias: "Ari", hand: "right", clubGroup: "iron", club: "with the 7-iron" },
  ...{ madeOn: "2031-01-01", dueOn: "2031-01-08", body, remindedAt: null, family: words },
  ...change,
});
const source = (...films: readonly DueFilm[]) => ({
  films,
  fundamentals: orderedFundamentals([]),
  today: "2031-01-12",
  dayOf: (at: string) => at.slice(0, 10),
});

describe("what is due", () => {
  it("says who promised what by when, how long ago that is, and whether they were reminded", () => {
    const { films, title } = buildDuePage(
      words,
      source(film(), film({ planId: "p2", alias: "Bea", remindedAt: "2031-01-10T08:00:00Z" })),
    );
    expect(title).toBe("2 promised films have not come");
    expect(films.table?.rows.map(({ cells }) => cells)).toEqual([
      ["Ari", "Wed 8 Jan", "4", "Wrist hinge, Foot line: 5 swings, from the front", "1 Jan", ""],
      ["Bea", "Wed 8 Jan", "4", "Wrist hinge, Foot line: 5 swings, from the front", "1 Jan", "10 Jan"],
    ]);
    expect(films.table?.rows.map(({ href }) => href)).toEqual(Array(2).fill("/students/s1/plan?club=iron"));
    expect(films.table?.rows.map(({ tone }) => tone)).toEqual(["plain", "quiet"]);
  });

  it("has a ready reminder for each, without blame, and one for a plan that can't be read", () => {
    const items = buildDuePage(words, source(film(), film({ body: null }))).reminders?.items ?? [];
    expect(items[0]?.message.text).toBe(
      "Ari: we hoped for a video by Wednesday 8 January. Nothing is lost. Please send it when you can. 5 swings with the 7-iron, from the front. If anything hurts: no video, and tell us.",
    );
    expect(items[1]?.message.text).not.toContain("swings");
    expect(items[0]?.plan.href).toBe("/students/s1/plan?club=iron");
    expect(items[0]?.press.hidden).toEqual({ studentId: "s1", planId: "p1" });
  });

  it("asks for what the message asked for: the most swings of each view, not of the film", () => {
    const views = ["face-on" as const, "down-the-line" as const];
    const text = (...ids: readonly [string, number][]) =>
      buildDuePage(
        words,
        source(film({ body: { ...body, views, fundamentals: ids.map(([id, swings]) => ({ id, swings })) } })),
      ).reminders?.items[0]?.message.text;
    expect(text(["hinge", 5], ["foot-line", 3])).toContain(
      "5 swings with the 7-iron, from the front, and 3 from behind",
    );
    expect(text(["hinge", 5], ["foot-line", 3], ["gone", 4])).toContain("and 4 from behind");
  });

  it("says it where nothing is due", () => {
    const page = buildDuePage(words, source());
    expect([page.title, page.films.table, page.reminders]).toEqual(["No promised film is overdue", null, null]);
  });
});
