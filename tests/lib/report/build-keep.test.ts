import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import type { OwnedWatch } from "@/lib/domain/track-verdict";
import { buildKeep, drillThen } from "@/lib/report/build-keep";
import { NO_WORK_FACTS } from "@/lib/report/order-of-work";
import type { SeasonSource, SeasonTrack } from "@/lib/report/season-source";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const TODAY = "2026-07-20";
const WATCH: OwnedWatch = {
  ...{ since: "2026-07-05", sessions: 2, raisedOn: "2026-07-13", direction: "down", logBayesFactor: Math.log(240) },
  size: { estimate: -4.9, low80: -6.4, high80: -3.4, low95: -7.2, high95: -2.7 },
};
const LEVEL = { estimate: 5, low80: 4, high80: 6, low95: 4, high95: 6 };

function track(id: string, over: Readonly<Record<string, unknown>>, days = ["2026-07-05", "2026-07-13"]): SeasonTrack {
  const fundamental = BUILT_IN.find((each) => each.id === id);
  const sessions = days.map((day, index) => ({ session: { day }, apart: null, swings: [], captureSd: 1, index }));
  const goal = { low: -3, high: 8, scope: "built-in" };
  return {
    history: { fundamental, clubGroup: "iron", sessions, goal, goals: [goal], judged: { sessions: [] } },
    verdict: {
      ...{ verdict: "open", position: "inside", ownedSince: "2026-05-01", watch: null, levelNow: LEVEL, changes: [] },
      ...{ change: null, moved: null },
      ...over,
    },
    asking: null,
  } as unknown as SeasonTrack;
}

const drill = (id: string, fundamentalId: string, start: string, dose = "12 minutes") => ({
  ...{ id, drill: `Drill ${id}`, fundamentalId, start, end: null, dose },
});

function keep(tracks: readonly SeasonTrack[], over: Partial<SeasonSource> = {}) {
  const part = buildKeep(words, {
    student: { id: "s1", alias: "Ivo", birthYear: 1998, hand: "right", zone: "UTC", clubs: "" },
    ...{ tracks, fundamentals: BUILT_IN, work: NO_WORK_FACTS, choice: null, drills: [], events: [], clubs: [] },
    sessions: ["2026-07-05", "2026-07-13"].map((day) => ({ day })),
    ...{ consent: { kind: "given" }, asOf: TODAY, today: TODAY, clubGroup: "iron", grouping: SHORT_LIST },
    ...{ mentions: [], seasonStart: "2026-01-01" },
    ...over,
  } as unknown as SeasonSource);
  if (part === null) throw new Error("no part");
  return part;
}
const textOf = (part: ReturnType<typeof keep>, at = 0): string =>
  [...(part.items[at]?.texts ?? []), part.items[at]?.dose?.text ?? ""].join(" ").replace(/[\u00a0\u202f]/g, " ");

describe("what is owned, to keep", () => {
  it("nothing measured has no such part; nothing owned says what owned means here", () => {
    expect(buildKeep(words, { ...({} as SeasonSource), tracks: [] })).toBeNull();
    const none = keep([track("tilt-kept", { ownedSince: null })]);
    expect([none.heading, none.items]).toEqual(["Nothing is owned yet", []]);
    expect(none.rule).toContain("The last 3 films");
    const own = { from: "2026-07-01", sessions: 5, spanDays: 40, restDays: 0, share: 0.8, shareLow: 0.6 };
    const set = keep([track("tilt-kept", {})], { owningRules: [own, { ...own, from: "2026-07-21", sessions: 9 }] });
    expect(set.rule).toContain("The last 5 films");
    expect(set.rule).toContain("about 80 of 100");
  });

  it("an alarm comes first, with the drill of then in a short dose and a link that gives it again", () => {
    const drills = [
      drill("d1", "tilt-kept", "2026-02-01"),
      drill("d2", "tilt-kept", "2026-03-01"),
      drill("d3", "tilt-kept", "2026-06-01"),
    ];
    const part = keep([track("hinge", {}), track("tilt-kept", { watch: WATCH })], { drills });
    expect(part.items.map(({ fundamentalId, state }) => [fundamentalId, state])).toEqual([
      ["tilt-kept", "watch"],
      ["hinge", "keeps"],
    ]);
    expect(textOf(part)).toContain("Look again: two films below its level since 5 Jul, by 4.9 ± 2.3°");
    expect(textOf(part)).toContain(
      "Drill d2, from 1 Mar (12 minutes). A short dose, as is common: 10 minutes or 15 slow ones, 3 days a week",
    );
    expect(part.items[0]?.dose?.action.href).toBe("/students/s1/drills/new?again=d2");
    expect(JSON.stringify(part)).not.toMatch(/slip/i);
    expect(part.heading).toBe("2 fundamentals are owned; one to look at again");
  });

  it("says the dose of then in full: 20 repeats on 4 days a week are a dose, whatever words stand beside them", () => {
    const doseThen = (dose: object) =>
      textOf(
        keep([track("tilt-kept", { watch: WATCH })], {
          drills: [{ ...drill("d1", "tilt-kept", "2026-03-01", ""), ...dose }],
        }),
      );
    expect(doseThen({ reps: 20, daysAWeek: 4 })).toContain(
      "from 1 Mar (20 repeats a day, 4 days a week). A short dose",
    );
    expect(doseThen({})).toContain("from 1 Mar. A short dose");
  });

  it("without a drill from before it was owned it leads to the choice of one; while the work is stopped to none", () => {
    const watched = [track("tilt-kept", { watch: WATCH })];
    expect(keep(watched, { drills: [drill("d3", "tilt-kept", "2026-06-01")] }).items[0]?.dose?.action.href).toBe(
      "/students/s1/drills/new?for=tilt-kept",
    );
    const stop = { kind: "pause", since: "2026-07-14", until: null } as const;
    expect(keep(watched, { work: { ...NO_WORK_FACTS, stop } }).items[0]?.dose).toBeNull();
  });

  it("settled it rests, and that says what it costs: 2 × 8 days, resting 2 × 3 × 8 = 48", () => {
    const part = keep([track("tilt-kept", { verdict: "steady" })]);
    expect(part.items[0]?.state).toBe("rests");
    expect(textOf(part)).toContain("read it every third film, or not at all");
    expect(part.cost).toContain("an early sign takes about 48 days instead of 16");
    expect(keep([track("tilt-kept", {})]).cost).toBe("");
    expect(keep([track("tilt-kept", { verdict: "steady" })], { sessions: [] }).cost).toContain("three times as late");
  });

  it("proved for its track alone it is not settled, and doesn’t rest", () =>
    expect(keep([track("tilt-kept", { verdict: "gain", change: {} })]).items[0]?.state).toBe("keeps"));

  it("six weeks without a film of it it is to be checked: 13 Jul and 42 days are 24 Aug", () => {
    const at = (today: string) => keep([track("tilt-kept", { verdict: "steady" })], { today }).items[0];
    expect(at("2026-08-24")?.state).toBe("rests");
    expect(at("2026-08-25")?.state).toBe("check");
    expect(at("2026-08-25")?.texts.join(" ")).toContain("No film of it since Mon 13 Jul 2026");
  });
});

describe("what is released", () => {
  it("names what became owned after a drill, the next with its reason, and one link to a drill for it", () => {
    const outside = track("hinge", { ownedSince: null, position: "outside" });
    const own = track("tilt-kept", { ownedSince: "2026-07-13" });
    const drills = [drill("d1", "tilt-kept", "2026-03-01")];
    const fundamentals = BUILT_IN.filter(({ id }) => id === "hinge" || id === "tilt-kept");
    const { release } = keep([outside, own], { drills, fundamentals });
    expect(release?.heading).toBe("Tilt kept is owned since 13 Jul and released");
    expect(release?.text).toContain("Next by the order of work: Wrist hinge.");
    expect(release?.action?.href).toBe("/students/s1/drills/new?for=hinge");
    expect(keep([outside, own], { fundamentals }).release).toBeNull();
  });

  it("of several each has the day of its own, and one day that they share is said once", () => {
    const drills = [drill("d1", "tilt-kept", "2026-03-01"), drill("d2", "hinge", "2026-03-01")];
    const heading = (day: string) =>
      keep([track("hinge", { ownedSince: day }), track("tilt-kept", { ownedSince: "2026-07-13" })], { drills }).release
        ?.heading;
    expect(heading("2026-07-01")).toBe("Owned and released: Wrist hinge since 1 Jul, Tilt kept since 13 Jul");
    expect(heading("2026-07-13")).toBe("Wrist hinge, Tilt kept are owned since 13 Jul and released");
  });
});

describe("the drill of then", () => {
  it("is the last for it that began before it was owned", () => {
    const drills = [
      drill("a", "hinge", "2026-03-02"),
      drill("b", "hinge", "2026-03-01"),
      drill("c", "foot-line", "2026-04-01"),
    ];
    expect(drillThen(drills, "hinge", "2026-05-01")?.id).toBe("a");
    expect(drillThen(drills, "hinge", "2026-03-02")?.id).toBe("b");
    expect(drillThen(drills, "hinge", "2026-03-01")).toBeNull();
  });
});
