import { describe, expect, it } from "vitest";
import { orderedFundamentals } from "@/lib/domain/catalogue";
import type { ProvedChange, TrackVerdict } from "@/lib/domain/track-verdict";
import { buildReview } from "@/lib/report/build-review";
import type { SeasonPage } from "@/lib/report/page-model";
import { MOST_ROWS } from "@/lib/report/review-rows";
import type { ReviewSource, ReviewTrack } from "@/lib/report/review-source";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const CATALOGUE = orderedFundamentals([]);
const level = (estimate: number, half = 4) => ({
  ...{
    estimate,
    low95: estimate - half,
    high95: estimate + half,
    low80: estimate - half / 2,
    high80: estimate + half / 2,
  },
});
const change = (from: number, to: number, more: Partial<ProvedChange> = {}): ProvedChange => ({
  ...{ verdict: "gain", shape: "step", from: "2031-02-01", to: "2031-02-09", set80: null, set95: null },
  ...{ size: level(to - from), before: level(from), after: level(to), moved: null, provedOn: "2031-02-20" },
  ...more,
});

/** A track of the catalogue, outside its goal and open, unless changed. */
function track(id: string, verdict: object = {}, more: Partial<ReviewTrack> = {}): ReviewTrack {
  const changes = "changes" in verdict ? (verdict.changes as readonly ProvedChange[]) : [];
  const base = { verdict: "open", position: "outside", levelNow: level(90), changes, change: changes.at(-1) ?? null };
  const rest = { ownedSince: null, watch: null, moved: null, changeBelow: 6, smallestWorthwhile: 5, looks: [] };
  return {
    history: {
      fundamental: CATALOGUE.find((each) => each.id === id),
      goal: { low: 30, high: 80 },
      sessions: [{ session: { day: "2031-03-01" }, apart: null }],
    },
    verdict: { ...base, ...rest, ...verdict } as unknown as TrackVerdict,
    ...{ asking: null, start: level(95, 12), plateau: null, retained: "" },
    ...more,
  } as unknown as ReviewTrack;
}

function review(tracks: readonly ReviewTrack[], more: Partial<ReviewSource> = {}, season: object = {}) {
  const row = ({ history }: ReviewTrack) => ({
    fundamentalId: history.fundamental.id,
    ...{ href: "/x", name: history.fundamental.id, place: "waits", glyph: "open", word: "Not settled", text: "Said." },
    chart: { x: { from: 0, to: 1, ticks: [] } },
  });
  const page = {
    proved: { items: [] },
    evidence: { groups: [{ label: "", rows: tracks.map(row) }], practice: null },
    ...{ clubGroups: null, contact: null, next: null, cautions: [] },
    ...season,
  } as unknown as SeasonPage;
  return buildReview(words, {
    ...{ student: { id: "s1", alias: "Ari" }, season: page, tracks, drills: [], practiceDays: 0 },
    films: { first: "2031-01-04", last: "2031-03-01", count: 9 },
    ...{ clubName: "irons", seasonStart: "2031-01-01", today: "2031-03-05" },
    ...more,
  });
}
/** A number is never parted from its unit; here any space is one. */
const plain = (text: string | undefined) => text?.replaceAll("\u00a0", " ");
const cellsOf = (page: ReturnType<typeof review>) => page.table?.table.rows.map((row) => row.cells.map(plain)) ?? [];
const cells = (...tracks: readonly ReviewTrack[]) => cellsOf(review(tracks));
const gain = { verdict: "gain", listed: true, changes: [change(140, 70)], changeBelow: null };

describe("the review of a season", () => {
  it("starts from the level before the first proved change, and else from the first films", () => {
    expect(cells(track("trail-v", gain))[0]?.slice(0, 3)).toEqual(["Trail-hand V", "140 ± 4 %", "90 ± 4 %"]);
    expect(cells(track("trail-v"))[0]?.[1]).toBe("95 ± 12 %");
    expect(cells(track("trail-v", {}, { start: null }))[0]?.[1]).toBe("no film counts");
  });

  it("calls nothing a change that isn't proved on the roster's list", () => {
    expect(cells(track("trail-v", gain))[0]?.[4]).toBe("140 % → 70 %, some time in 1–9 Feb");
    const alone = cells(track("trail-v", { ...gain, listed: false }))[0];
    expect([alone?.[1], alone?.[4]]).toEqual(["95 ± 12 %", "not settled"]);
    expect(cells(track("trail-v"))[0]?.[4]).toBe("not settled; if anything, below 6 %");
    expect(cells(track("trail-v", { verdict: "steady" }))[0]?.[4]).toBe("any change is below 5 %");
    const items = [
      { glyph: "open", heading: "for itself", text: "", href: "" },
      { glyph: "gain", heading: "proved", text: "", href: "" },
    ];
    const page = review([track("trail-v")], {}, { proved: { items } });
    expect(page.proved.items.map(({ heading }) => heading)).toEqual(["proved"]);
    expect(page.title).toBe("Ari’s season: one change proved, 0 of 1 inside");
  });

  it("a second change that stands on the list while the first never did starts from the first films", () => {
    const two = { verdict: "gain", listed: true, changes: [change(140, 100), change(100, 70)], looks: [] };
    const [row] = cells(track("trail-v", two));
    expect([row?.[1], row?.[4]]).toEqual(["95 ± 12 %", "100 % → 70 %, some time in 1–9 Feb"]);
  });

  it("says a level of long ago with its day", () => {
    const page = review([track("trail-v")], { today: "2031-04-20" });
    expect(cellsOf(page)[0]?.[2]).toBe("90 ± 4 % on 1 Mar");
  });

  it("talks about what changed, what stands still outside and what is owned; of the rest it says that there is more", () => {
    const flat = { kind: "flat", weeks: 12, below: 3, practised: 31, asked: 35, drills: 1 } as const;
    const page = review([
      track("trail-v", gain, { retained: "It stays." }),
      track("lead-v"),
      track("setup-tilt", {}, { plateau: flat }),
      track(
        "ball-position",
        { ownedSince: "2031-02-20", position: "inside" },
        { plateau: { kind: "held", weeks: 11 } },
      ),
    ]);
    expect(page.rows?.items.map(({ id }) => id)).toEqual(["trail-v", "setup-tilt", "ball-position"]);
    expect(page.rows?.items[0]?.lines).toEqual(["Said.", "It stays."]);
    expect(page.rows?.items[1]?.lines[1]).toBe(
      "12 weeks without a change bigger than 3°, though practised on 31 days of 35 asked for of the last 10 weeks: the drill is to be changed, not the effort.",
    );
    const two = review([track("setup-tilt", {}, { plateau: { ...flat, drills: 2 } })]);
    expect(two.rows?.items[0]?.lines[1]).toContain(
      "of the last 10 weeks (2 drills, each counted by itself): the drill",
    );
    expect(page.rows?.items[2]?.lines[1]).toBe("Held inside for 11 weeks.");
    expect(page.rows?.more).toMatch(/^One more stands/);
  });

  it("never draws more charts than a sheet holds, the proved ones first", () => {
    const owned = { ownedSince: "2031-02-20", position: "inside" };
    const ids = CATALOGUE.filter(({ derivedFrom }) => derivedFrom === null).map(({ id }) => id);
    const page = review(ids.map((id, at) => track(id, at === ids.length - 1 ? gain : owned)));
    expect(page.rows?.items).toHaveLength(MOST_ROWS);
    expect(page.rows?.items.at(-1)?.id).toBe(ids.at(-1));
  });

  it("says practice as asked and as logged, and where nothing was asked", () => {
    const wall = { id: "g1", drill: "Wall", fundamentalId: "hinge", start: "2031-01-05", end: "2031-01-20" };
    const lines = (drills: ReviewSource["drills"]) => review([], { drills, practiceDays: 9 }).practice;
    const given = (dose: object, asked: number | null = null) =>
      lines([{ given: { ...wall, dose: "", ...dose }, done: 9, asked }]).lines;
    expect(given({ dose: "20 slow" })).toEqual(["Wall, 5–20 Jan: 20 slow; logged on 9 days."]);
    expect(given({}, 11)).toEqual(["Wall, 5–20 Jan: no dose said; logged on 9 of 11 days asked for."]);
    expect(given({ reps: 20, daysAWeek: 4 }, 11)).toEqual([
      "Wall, 5–20 Jan: 20 repeats a day, 4 days a week; logged on 9 of 11 days asked for.",
    ]);
    expect([lines([]).heading, lines([]).lines]).toEqual(["Practice on 9 days", ["No drill was given this season."]]);
  });

  it("says before the next thing what is to be cared for in it, and pain on its own, for the paper", () => {
    const pain = words.say("caution.pain");
    const next = {
      heading: "Next",
      text: "Why.",
      cautions: ["Mind the back."],
      notes: ["Film first."],
      beside: ["Keep."],
      alters: null,
    };
    const page = review([], {}, { next, cautions: ["Much is asked.", pain, "A young body."] });
    expect(page.next.lines).toEqual(["Mind the back.", "Why.", "Film first.", "Keep."]);
    expect([page.pain, page.cautions]).toEqual([pain, ["Much is asked.", "A young body."]]);
  });

  it("is a whole page before the first film, and says which season it holds for", () => {
    const page = review([], { films: null });
    expect([page.table, page.rows, page.title]).toEqual([null, null, "Ari’s season: no film counts yet"]);
    expect(page.season).toBe(
      "The season began on 1 Jan 2031, as the academy set it; what is said holds for this season.",
    );
    expect(page.documentTitle).not.toContain("Ari");
    expect(page.promise.lines[0]).toMatch(/unchanged seasons/);
  });
});
