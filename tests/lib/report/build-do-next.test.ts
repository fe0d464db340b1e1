import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { isNamedInOrder } from "@/lib/domain/order-of-work";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { buildDoNext } from "@/lib/report/build-do-next";
import { seasonWork } from "@/lib/report/build-season-next";
import type { SeasonSource } from "@/lib/report/season-source";
import { wordsFor } from "@/lib/words/catalogue";
import { levelOf } from "../verdict/made-work";
import { madeSeason, madeSeasonTrack, plain, TODAY } from "./made-season";

const words = wordsFor("en");
const OUTSIDE = { position: "outside", levelNow: levelOf(9, 2) } as const;
const EDGE = { position: "edge" } as const;
type Made = Readonly<Record<string, Partial<TrackVerdict> | null>>;

/** Everything that the order of work names is inside on two days of films, but what is said otherwise. */
function season(made: Made, over: Partial<SeasonSource> = {}): SeasonSource {
  const tracks = BUILT_IN.filter(isNamedInOrder).flatMap(({ id }) => {
    const verdict = made[id] === undefined ? {} : made[id];
    return verdict === null ? [] : [madeSeasonTrack(id, verdict, ["2031-04-20", "2031-05-01"])];
  });
  return madeSeason(tracks, over);
}

/** The sentence of one fundamental's page, by the very priority of the season's page. */
function next(id: string, made: Made, over: Partial<SeasonSource> = {}): string {
  const source = season(made, over);
  const track = source.tracks.find(({ history }) => history.fundamental.id === id);
  if (track === undefined) throw new Error(id);
  const { student, drills, today } = source;
  return plain(buildDoNext(words, { ...track, student, drills, today }, seasonWork(source)).heading);
}

const rails = { id: "d", drill: "Rails", fundamentalId: "foot-line", start: "2031-04-22", end: null, dose: "" };

describe("the next act about one fundamental", () => {
  it("in hand and outside: a drill to give, or the one that runs and the day on which it is filmed again", () => {
    const made = { "foot-line": OUTSIDE };
    const drill = (remeasureOn: string | null) => next("foot-line", made, { drills: [{ ...rails, remeasureOn }] });
    expect(next("foot-line", made)).toBe("Give a drill for it, and film it again some days after the last practice.");
    expect(drill("2031-05-20")).toBe("Go on with Rails, and film it again on Tue 20 May.");
    expect(drill(null)).toBe("Go on with Rails, and set a day to film it again.");
    expect(drill(TODAY)).toBe(
      "Go on with Rails, film it again now, its day was Sat 10 May, and decide about the drill.",
    );
    expect(next("foot-line", made, { drills: [{ ...rails, end: "2031-05-01" }] })).toMatch(/^Give a drill/);
  });

  it("what isn't known is filmed and not coached, in hand or before what is", () => {
    expect(next("hinge", { hinge: EDGE })).toMatch(/^Film it again with more swings .*; don’t coach it until then\.$/);
    const made = { "trail-v": EDGE, "foot-line": OUTSIDE };
    expect(next("trail-v", made)).toMatch(/^Film it again with more swings .*, before Foot line is coached:/);
    expect(next("foot-line", made)).toBe(
      "Film Trail-hand V first: earlier in the order and not known yet. This one is coached after that.",
    );
  });

  it("what lies outside later in the order waits, by name", () => {
    expect(next("hip-sway", { "foot-line": OUTSIDE, "hip-sway": OUTSIDE })).toBe(
      "Nothing now: it waits for Foot line, which comes first.",
    );
  });

  it("two that are inside are kept, the others are left alone; owned is looked at again, read in turn or at rest", () => {
    expect(next("trail-v", {})).toBe("Keep it: read it in turn, and do nothing else about it.");
    expect(next("hip-sway", {})).toBe("Nothing: it lies inside, and others are looked at before it.");
    const owned = { ownedSince: "2031-03-01" };
    expect(next("hinge", { hinge: { ...owned, verdict: "steady" } })).toMatch(/^It rests: read it every third film/);
    expect(next("hinge", { hinge: owned })).toMatch(/^Read it in turn/);
    expect(next("hinge", { hinge: { ...owned, watch: {} as never } })).toMatch(/^Read it on the next film: /);
  });

  it("asked for twice without a film it is asked for no more", () => {
    const work = { stop: null, chosenId: null, asked: new Map([["hinge", 2]]) };
    expect(next("hinge", { hinge: EDGE, "foot-line": OUTSIDE }, { work })).toMatch(/^Nothing more is asked for: /);
  });

  it("what the coach chose though it lies inside is filmed; after six weeks a film comes before all else", () => {
    const work = { stop: null, chosenId: "hinge", asked: new Map() };
    expect(next("hinge", {}, { work })).toBe(
      "The coach put it in hand. Film it again: the films don’t show it outside its band.",
    );
    const made = { "foot-line": OUTSIDE };
    expect(next("foot-line", made, { today: "2031-07-01" })).toBe(
      "Film it again before anything else: no film since 1 May.",
    );
  });

  it("a stop is said of everything, without what it is for where only its days are told", () => {
    const work = {
      stop: { kind: "pause", since: "2031-05-08", until: null },
      chosenId: null,
      asked: new Map(),
    } as const;
    for (const id of ["foot-line", "hinge"])
      expect(next(id, { "foot-line": OUTSIDE }, { work })).toBe("Nothing for now. Paused since 8 May.");
  });

  it("its reason is one press away, on the season's page with the same clubs", () => {
    const source = season({ "foot-line": OUTSIDE });
    const [track] = source.tracks;
    if (track === undefined) throw new Error("no track");
    const { link, margin } = buildDoNext(words, { ...source, ...track }, seasonWork(source));
    expect([margin, link]).toEqual([
      "Do next",
      { href: "/students/s1?club=iron", label: "Why, in Nia’s order of work" },
    ]);
  });
});
