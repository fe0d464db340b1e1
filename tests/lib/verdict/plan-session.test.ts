import { describe, expect, it } from "vitest";
import { orderedFundamentals } from "@/lib/domain/catalogue";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { PlanAnswers } from "@/lib/verdict/plan-answers";
import { planSeconds } from "@/lib/verdict/plan-minutes";
import { type PlanInput, type PlanTrack, planSession } from "@/lib/verdict/plan-session";

const CATALOGUE = orderedFundamentals([]);
const FILMS = ["f1", "f2", "f3", "f4"];
const NO_PLAN = { none: "no-plan", sessionsToFirstLook: 0 } as const;
const NOTHING: PlanAnswers = {
  notSent: { "face-on": 0, "down-the-line": 0 },
  short: { films: 0, came: 0 },
  awaited: null,
};
const fundamental = (id: string) => CATALOGUE.find((each) => each.id === id) as (typeof CATALOGUE)[number];
const plan = (sessions: number, chance = 0.8, swingsEach = 5) => ({ sessions, swingsEach, captureSd: 1, chance });

/** A track of the catalogue, read in the films named; inside and open without a plan unless changed. */
function track(id: string, verdict: Partial<TrackVerdict> = {}, read: readonly string[] = FILMS): PlanTrack {
  const base = {
    verdict: "open",
    position: "inside",
    watch: null,
    ownedSince: null,
    settle: NO_PLAN,
    settleIfReal: null,
  };
  return {
    history: {
      fundamental: fundamental(id),
      sessions: read.map((film) => ({
        session: { id: film, day: "2031-01-01" },
        swings: [],
        apart: null,
        captureSd: 1,
      })),
      judged: {},
    },
    verdict: { ...base, ...verdict },
    asking: null,
  } as unknown as PlanTrack;
}
const made = (tracks: readonly PlanTrack[], change: Partial<PlanInput> = {}) =>
  planSession({
    ...{ tracks, fundamentals: CATALOGUE, inHand: tracks[0]?.history.fundamental.id ?? null },
    ...{ answers: NOTHING, films: FILMS, today: "2031-01-10", wish: { fundamentals: null, swings: null }, blocks: [] },
    ...change,
  });
const said = (of: ReturnType<typeof planSession>) =>
  of.items.map((item) => `${item.fundamental.id} ${item.role} ${item.swings}`);
const left = (of: ReturnType<typeof planSession>) => of.leftOut.map((each) => `${each.fundamental.id} ${each.why}`);
const outside = { position: "outside" } as const;

describe("the next film", () => {
  it("one in hand and two keeps: what a minute settles comes first, 2 films before 6, half a chance behind a whole one", () => {
    const tracks = [
      track("trail-v", outside),
      track("lead-v", { settle: plan(6) }),
      track("setup-tilt", {
        settleIfReal: { ...plan(2), probability: 0.3, direction: "up", size: 3, chanceAnySize: 0.3 },
      }),
      track("ball-position", { settle: plan(2) }),
    ];
    expect(said(made(tracks))).toEqual(["trail-v in-hand 5", "ball-position keep 3", "lead-v keep 3"]);
    const first = made(tracks);
    expect([first.swings, first.views, first.seconds]).toEqual([5, ["face-on"], planSeconds(first.items)]);
    expect(first.items[1]?.tells).toEqual({ kind: "plan", plan: plan(2) });
  });

  it("an alarm comes before a plan that was taken, that before what is upstream and in doubt, that before a keep", () => {
    const taken = track("posture-bend", outside);
    const tracks = [
      track("hinge", outside),
      track("lead-v", { position: "edge" }),
      track("setup-tilt", { settle: plan(1, 0.99) }),
      { ...taken, asking: { state: "planned", plan: { ...plan(3), after: "2031-06-01" } } } as unknown as PlanTrack,
      track("hip-sway", { watch: {} as never, ownedSince: "2031-01-01" }),
    ];
    const all = made(tracks, {
      blocks: ["lead-v"],
      wish: { fundamentals: tracks.map((each) => each.history.fundamental.id), swings: null },
    });
    expect(all.items.map(({ role }) => role)).toEqual(["in-hand", "alarm", "asked", "doubt", "keep"]);
    expect(all.items[2]?.tells).toEqual({ kind: "taken", come: 0, of: 3, swingsEach: 5, chance: 0.8 });
    expect(said(made(tracks))).toEqual(["hinge in-hand 5", "hip-sway alarm 5", "posture-bend asked 5"]);
  });

  it("what is owned and settled rests for two films and is read in the third; an open question wakes it", () => {
    const owned = { ownedSince: "2031-01-01", verdict: "steady" } as const;
    const of = (read: readonly string[], change = {}) =>
      made([track("trail-v", outside), track("setup-tilt", { ...owned, ...change }, read)]);
    expect(left(of(FILMS))).toEqual(["setup-tilt rests"]);
    expect(left(of(FILMS.slice(0, 3)))).toEqual(["setup-tilt rests"]);
    expect(said(of(FILMS.slice(0, 2)))).toContain("setup-tilt keep 3");
    expect(said(of(FILMS, { verdict: "open", settle: plan(2) }))).toContain("setup-tilt keep 3");
  });

  it("after six weeks without a film it is to be checked, so it rests no more: 42 days, and 43", () => {
    const owned = track("setup-tilt", { ownedSince: "2031-01-01", verdict: "steady" });
    const on = (today: string) => made([track("trail-v", outside), owned], { today });
    expect(left(on("2031-02-12"))).toEqual(["setup-tilt rests"]);
    expect(left(on("2031-02-13"))).toEqual([]);
    expect(said(on("2031-02-13"))).toContain("setup-tilt keep 3");
  });

  it("what is owned and not settled never rests, without a plan or proved for its track alone", () => {
    const of = (verdict: Partial<TrackVerdict>) =>
      made([track("trail-v", outside), track("setup-tilt", { ownedSince: "2031-01-01", ...verdict })]);
    expect(said(of({ verdict: "open" }))).toContain("setup-tilt keep 3");
    expect(said(of({ verdict: "gain", listed: false }))).toContain("setup-tilt keep 3");
    expect(left(of({ verdict: "gain", listed: true }))).toEqual(["setup-tilt rests"]);
  });

  it("a keep that three films left out comes before one that settles sooner", () => {
    const tracks = [
      track("trail-v", outside),
      track("lead-v", { settle: plan(1) }),
      track("setup-tilt", { settle: plan(1) }),
      track("ball-position", {}, FILMS.slice(0, 1)),
    ];
    expect(said(made(tracks))[1]).toBe("ball-position keep 3");
  });

  it("a view asked for twice in vain is planned without, once is asked again; where every view is, nothing is left out", () => {
    const tracks = [track("trail-v", outside), track("foot-line", { settle: plan(1) })];
    const answers = (times: number, face = 0): PlanAnswers => ({
      ...NOTHING,
      notSent: { "face-on": face, "down-the-line": times },
    });
    expect(made(tracks, { answers: answers(1) }).views).toEqual(["face-on", "down-the-line"]);
    const without = made(tracks, { answers: answers(2) });
    expect([without.views, left(without)]).toEqual([["face-on"], ["foot-line not-sent"]]);
    expect(made(tracks, { answers: answers(2, 2) }).views).toEqual(["face-on", "down-the-line"]);
  });

  it("swings that didn't come twice aren't asked for a third time; a wish is", () => {
    const tracks = [track("trail-v", outside), track("lead-v")];
    const answers = { ...NOTHING, short: { films: 2, came: 2 } };
    const fewer = made(tracks, { answers });
    expect([fewer.swings, fewer.fewerSwings]).toEqual([2, 2]);
    expect(made(tracks, { answers: { ...NOTHING, short: { films: 1, came: 2 } } }).swings).toBe(5);
    const wished = made(tracks, { answers, wish: { fundamentals: null, swings: 8 } });
    expect([wished.swings, wished.fewerSwings, said(wished)[1]]).toEqual([8, null, "lead-v keep 3"]);
  });

  it("a coach's pick stands, however long it takes; what isn't known is left out", () => {
    const tracks = [track("trail-v", outside), track("lead-v")];
    const ids = CATALOGUE.map(({ id }) => id as string);
    expect(made(tracks, { wish: { fundamentals: ["lead-v", "nothing"], swings: null } }).items).toHaveLength(1);
    const all = made(tracks, { wish: { fundamentals: ids, swings: 20 } });
    expect(all.items.length).toBe(CATALOGUE.filter((each) => each.derivedFrom === null).length);
    expect(all.seconds).toBeGreaterThan(15 * 60);
  });

  it("what would take more than 15 minutes leaves a keep for the next film", () => {
    const long = { settle: plan(1, 0.9, 20) };
    const tracks = ["foot-line", "setup-tilt", "posture-bend"].map((id) => ({
      ...track(id, { ...outside, ...long }),
      asking: { state: "planned", plan: { ...plan(1, 0.9, 20), after: "2031-06-01" } },
    })) as unknown as PlanTrack[];
    const cut = made(tracks);
    expect(cut.seconds).toBeLessThanOrEqual(15 * 60);
    expect(left(cut)).toContain("posture-bend minutes");
  });

  it("nothing measured: the first three of the order of work, three swings each", () =>
    expect(said(made([], { films: [] }))).toEqual(["trail-v unknown 3", "lead-v unknown 3", "foot-line unknown 3"]));

  it("upstream of what is in hand, what was never measured is named unknown; what isn't upstream isn't", () => {
    const tracks = [track("hinge", outside), track("trail-v"), track("lead-v")];
    const names = left(made(tracks));
    expect(names).toContain("foot-line unknown");
    expect(names.some((name) => name.startsWith("hip-sway"))).toBe(false);
  });

  it("what was never measured and comes first is in hand, or measured before a keep", () => {
    const tracks = [track("lead-v"), track("setup-tilt")];
    expect(said(made(tracks, { inHand: "trail-v" }))[0]).toBe("trail-v in-hand 5");
    const upstream = made([track("hinge", outside), ...tracks], { inHand: "hinge", blocks: ["trail-v", "foot-line"] });
    expect(said(upstream)).toEqual(["hinge in-hand 5", "trail-v unknown 3", "foot-line unknown 3"]);
  });

  it("without any fundamental there is no plan", () =>
    expect(made([], { fundamentals: [] })).toMatchObject({ items: [], swings: 0, views: [], seconds: 0 }));
});
