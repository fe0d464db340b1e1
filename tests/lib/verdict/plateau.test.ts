import { describe, expect, it } from "vitest";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { decidePlateau } from "@/lib/verdict/plateau";

const TODAY = "2031-03-31";
/** 70 days, ten weeks, before that day. */
const TEN_WEEKS = "2031-01-20";
const film = (day: string, apart: object | null = null, index: number | null = 0) => ({
  session: { day },
  apart,
  index,
});
const level = (estimate: number) => ({ estimate, low95: estimate - 1, high95: estimate + 1 });
/** Outside by 4 above a goal of 0 to 10, open, any change below 3. */
const open = {
  verdict: "open",
  position: "outside",
  change: null,
  reach: null,
  changeBelow: 3,
  smallestWorthwhile: 2,
  levelNow: level(14),
};
const days = (count: number) => Array.from({ length: count }, (_, at) => `2031-02-${String(at + 1).padStart(2, "0")}`);
interface Practised {
  readonly days: readonly string[];
  readonly logged?: readonly (readonly string[])[];
  readonly asked: number | null;
  readonly stopped?: number;
}
function plateau(
  change: object = {},
  practice: Practised = { days: [], asked: null },
  sessions: readonly object[] = [film(TEN_WEEKS)],
  goals?: readonly object[],
) {
  const history = { sessions, goal: { low: 0, high: 10 }, judged: { goals } };
  return decidePlateau(
    history as never,
    { ...open, ...change } as unknown as TrackVerdict,
    { stopped: 0, ...practice, logged: practice.logged ?? [practice.days] },
    TODAY,
  );
}

describe("ten weeks without a change", () => {
  it("are counted from the first film that counts, or from the latest change: 69 days are no ten weeks", () => {
    expect(plateau({}, undefined, [film("2031-01-21")])).toBeNull();
    expect(plateau({}, undefined, [])).toBeNull();
    expect(plateau({}, undefined, [film("2030-06-01", { kind: "camera" }), film("2031-02-01")])).toBeNull();
    expect(plateau({}, undefined, [film("2030-06-01", null, null), film("2031-02-01")])).toBeNull();
    expect(plateau({ change: { to: "2031-01-21" } })).toBeNull();
  });

  const steady = { verdict: "steady", position: "inside", levelNow: level(5) };
  const films = (...filmed: string[]) => filmed.map((day) => film(day));

  it("held inside is said of what is proved to hold, up to the last film that counts", () => {
    const told = plateau(steady, undefined, films(TEN_WEEKS, "2031-03-30", TODAY));
    expect(told).toEqual({ kind: "held", weeks: 10 });
    expect(plateau(steady, undefined, films(TEN_WEEKS, "2031-03-30"))).toBeNull();
    const aside = [...films(TEN_WEEKS), film(TODAY, { kind: "camera" })];
    expect(plateau(steady, undefined, aside)).toBeNull();
    expect(plateau({ ...steady, verdict: "open" }, undefined, films(TEN_WEEKS, TODAY))).toBeNull();
  });

  it("or of a listed change whose new level lies inside, since its end", () => {
    const gain = { ...steady, verdict: "gain", change: { to: TEN_WEEKS, after: level(5) }, listed: true };
    const filmed = films("2030-06-01", TEN_WEEKS, TODAY);
    expect(plateau(gain, undefined, filmed)).toEqual({ kind: "held", weeks: 10 });
    expect(plateau({ ...gain, listed: false }, undefined, filmed)).toBeNull();
    expect(plateau({ ...gain, change: { to: TEN_WEEKS, after: level(0.5) } }, undefined, filmed)).toBeNull();
  });

  it("never from before the goal's first day, nor after six weeks without a film", () => {
    const filmed = films("2030-06-01", TODAY);
    expect(plateau(steady, undefined, filmed, [{ from: TEN_WEEKS }])).toEqual({ kind: "held", weeks: 10 });
    expect(plateau(steady, undefined, filmed, [{ from: "2031-01-21" }])).toBeNull();
    expect(plateau(steady, undefined, films("2030-06-01", "2031-02-17"))).toMatchObject({ kind: "held", weeks: 37 });
    expect(plateau(steady, undefined, films("2030-06-01", "2031-02-16"))).toBeNull();
  });

  it("a pause asks for nothing: 35 of 70 days stopped halve what is enough, and where none was asked nothing is said", () => {
    expect(plateau({}, { days: days(10), asked: null, stopped: 35 })).toMatchObject({ kind: "flat" });
    expect(plateau({}, { days: days(9), asked: null, stopped: 35 })).toMatchObject({ kind: "unpractised" });
    expect(plateau({}, { days: [], asked: 0, stopped: 60 })).toBeNull();
    expect(plateau({}, { days: [], asked: null, stopped: 70 })).toBeNull();
  });

  it("flat outside though practised, or without practice: 20 days in ten weeks where nobody said how many", () => {
    expect(plateau({}, { days: days(20), asked: null })).toEqual({
      kind: "flat",
      weeks: 10,
      below: 3,
      practised: 20,
      asked: null,
      drills: 1,
    });
    expect(plateau({}, { days: days(19), asked: null })).toMatchObject({ kind: "unpractised", practised: 19 });
  });

  it("of 35 days asked for 21 are practice, six of ten; a day counts once, and only in these weeks", () => {
    expect(plateau({}, { days: days(21), asked: 35 })?.kind).toBe("flat");
    expect(plateau({}, { days: days(20), asked: 35 })?.kind).toBe("unpractised");
    expect(plateau({}, { days: [...days(20), ...days(20)], asked: 35 })).toMatchObject({ practised: 20 });
    expect(plateau({}, { days: [TEN_WEEKS, "2031-04-01"], asked: null })).toMatchObject({ practised: 0 });
    expect(plateau({}, { days: [], asked: 0 })?.kind).toBe("flat");
  });

  it("two drills at once are counted each by itself: 10 and 10 of 20 days, though they are the same ten", () => {
    const both = [days(10), days(10)];
    expect(plateau({}, { days: [], logged: both, asked: 20 })).toMatchObject({
      kind: "flat",
      practised: 20,
      drills: 2,
    });
    const one = [days(10), []];
    expect(plateau({}, { days: [], logged: one, asked: 20 })).toMatchObject({ kind: "unpractised", practised: 10 });
  });

  it("the films can't tell: no bound, or one wider than the way that is left and than what is worthwhile", () => {
    expect(plateau({ changeBelow: null })).toEqual({ kind: "films", weeks: 10 });
    expect(plateau({ changeBelow: 4.1 })?.kind).toBe("films");
    expect(plateau({ changeBelow: 4 })?.kind).toBe("unpractised");
    expect(plateau({ position: "edge", levelNow: level(10), changeBelow: 2.5 })?.kind).toBe("films");
    expect(plateau({ position: "edge", levelNow: level(10), changeBelow: 2 })?.kind).toBe("unpractised");
  });

  it("what is holding is flat by what is worthwhile; a gain that stopped short says so", () => {
    expect(plateau({ verdict: "steady", changeBelow: null })).toMatchObject({ kind: "unpractised", below: 2 });
    expect(plateau({ reach: { kind: "stopped-short", chance: 0.9 }, change: { to: TEN_WEEKS } })).toEqual({
      kind: "stopped-short",
      weeks: 10,
    });
  });

  it("without a level nothing is said", () => expect(plateau({ position: null, levelNow: null })).toBeNull());
});
