import { describe, expect, it } from "vitest";
import { whyBlocked } from "@/lib/report/why-blocked";
import { change, OUTSIDE, student, TODAY, track } from "./brief-parts";

type Track = ReturnType<typeof track>;
const why = (...tracks: Track[]) => whyBlocked(student("s1", "Ari", tracks), TODAY);
const none = { settleIfReal: null } as const;
const SIX = ["2026-05-04", "2026-06-01", "2026-07-06", "2026-08-03", "2026-08-24", "2026-08-30"];
const films = (...marks: ("used" | "aided" | "set-aside")[]) => ({ days: SIX, marks });

describe("why films settle nothing", () => {
  it("nothing is said of a student without a film, nor of one whose questions have a plan", () => {
    expect(why()).toBeNull();
    expect(why(track("s1", "hinge"))).toBeNull();
  });

  it("the last two films set aside in every track; one that counts in any of them is enough, one alone is an accident", () => {
    const aside = films("used", "used", "used", "used", "set-aside", "set-aside");
    expect(why(track("s1", "hinge", {}, aside))).toEqual({ kind: "set-aside", films: 2 });
    expect(why(track("s1", "hinge", {}, aside), track("s1", "hip-sway", {}, { days: SIX }))).toBeNull();
    expect(why(track("s1", "hinge", {}, films("used", "used", "used", "used", "used", "set-aside")))).toBeNull();
  });

  it("filmed with an aid three times in a row; aided and set aside mixed are called set aside", () => {
    expect(why(track("s1", "hinge", {}, films("used", "used", "used", "aided", "aided", "aided")))).toEqual({
      kind: "aided",
      films: 3,
    });
    expect(why(track("s1", "hinge", {}, films("used", "used", "used", "used", "aided", "set-aside")))?.kind).toBe(
      "set-aside",
    );
  });

  it("films before a track's beginning are no films set aside: 6 on file, 1 judged", () => {
    const old = films("set-aside", "set-aside", "set-aside", "set-aside", "set-aside", "set-aside");
    expect(why(track("s1", "hinge", { sessions: 1 }, old))?.kind).not.toBe("set-aside");
  });

  it("a reader or a place that changed with the level, by the track; a question that isn't asked any more is none", () => {
    const torn = track("s1", "hip-sway", { notToldApart: { from: "placement", direction: "up", on: "2026-06-01" } });
    expect(why(track("s1", "hinge"), torn)).toEqual({ kind: "placement", summary: torn });
    const stopped = {
      studentId: "s1",
      fundamentalId: "hip-sway",
      clubGroup: "iron",
      state: "stopped",
      day: TODAY,
      who: "C",
      plan: null,
    } as const;
    expect(whyBlocked({ ...student("s1", "Ari", [track("s1", "hinge"), torn]), askings: [stopped] }, TODAY)).toBeNull();
  });

  it("fewer than four films count 43 days after the first; after 42 it is the usual beginning", () => {
    const three = (first: string) => track("s1", "hinge", none, { days: [first, "2026-08-10", "2026-08-24"] });
    expect(why(three("2026-07-19"))).toEqual({ kind: "few", films: 3, since: "2026-07-19" });
    expect(why(three("2026-07-20"))).toBeNull();
  });

  it("no plan is the usual state for 84 days after the first film, here from 8 Jun; a day more and it is said", () => {
    const since = (first: string) =>
      why(track("s1", "hinge", none, { days: [first, "2026-07-06", "2026-08-03", "2026-08-24"] }))?.kind ?? null;
    expect([since("2026-06-08"), since("2026-06-07")]).toEqual([null, "no-plan"]);
  });

  it("no plan: only where nothing at all is settled and no question that is asked has one", () => {
    const [hinge, sway] = [track("s1", "hinge", none), track("s1", "hip-sway", { ...OUTSIDE, ...none })];
    expect(why(hinge, sway)).toEqual({ kind: "no-plan", tracks: 2 });
    expect(why(hinge, track("s1", "hip-sway"))).toBeNull();
    expect(why(hinge, track("s1", "hip-sway", { ...none, verdict: "steady" }))).toBeNull();
    const alone = { ...none, verdict: "gain", listed: false, change: change("gain", "2026-08-03") } as const;
    expect(why(hinge, track("s1", "hip-sway", alone))).toBeNull();
  });
});
