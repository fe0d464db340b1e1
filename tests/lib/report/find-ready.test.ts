import { describe, expect, it } from "vitest";
import { findReady } from "@/lib/report/find-ready";
import { NO_WORK_FACTS } from "@/lib/report/order-of-work";
import type { TrackSummary } from "@/lib/report/track-summary";
import { wordsFor } from "@/lib/words/catalogue";
import { change, drill, OUTSIDE, source, student, track, WATCH } from "./brief-parts";

const words = wordsFor("en");
const owned = { ownedSince: "2026-08-03" };
const gained = { verdict: "gain", listed: true, change: change("gain", "2026-08-03") } as const;
const said = (...args: Parameters<typeof source>) => findReady(words, source(...args)).map((each) => each.say());

/** Everything that the order of work names before these is known, inside and no matter. */
const NAMED = [
  "trail-v",
  "lead-v",
  "foot-line",
  "setup-tilt",
  "posture-bend",
  "ball-position",
  "shaft-line",
  "tilt-kept",
];
const known = (...own: TrackSummary[]) => [
  ...NAMED.filter((id) => own.every((each) => each.fundamentalId !== id)).map((id) => track("s1", id)),
  ...own,
];

describe("students ready to move on", () => {
  const sway = track("s1", "hip-sway", OUTSIDE);

  it("what the drill is for is owned, and the next in the order of work waits: both are named", () => {
    const [found] = findReady(
      words,
      source([student("s1", "Ari", [track("s1", "hinge", owned), sway])], { drills: [drill("s1", "hinge")] }),
    );
    expect(found?.say()).toBe("is owned since 3 Aug. Next: Hip sway, top (outside its band).");
    expect(found?.fundamental?.href).toBe("/students/s1/hinge?club=iron");
    expect(found?.next?.().heading).toBe("Open Ari: Wrist hinge is owned; next is Hip sway, top");
  });

  it("inside its band is enough, and said so; on an edge the next is measured better first", () => {
    const edge = track("s1", "hip-sway", { position: "edge" });
    expect(said([student("s1", "Ari", known(track("s1", "hinge"), edge))], { drills: [drill("s1", "hinge")] })).toEqual(
      ["lies inside its band, not owned yet. Next: Hip sway, top (on its edge: measured better before it is coached)."],
    );
  });

  it("without a drill the last listed gain says what was worked on; an unlisted one says nothing", () => {
    expect(said([student("s1", "Ari", [track("s1", "hinge", gained), sway])])).toHaveLength(1);
    expect(said([student("s1", "Ari", [track("s1", "hinge", { ...gained, listed: false }), sway])])).toEqual([]);
  });

  it("of several drills that run the one given last is in hand", () => {
    const tracks = [track("s1", "foot-line", owned), track("s1", "hinge", OUTSIDE), sway];
    const drills = [drill("s1", "foot-line", "2026-05-01"), drill("s1", "hinge", "2026-07-01")];
    expect(said([student("s1", "Ari", tracks)], { drills })).toEqual([]);
  });

  it("nobody whose work is still outside, on watch, away, whose next has a drill or has slipped, or who has no next", () => {
    const drills = [drill("s1", "hinge")];
    const alone = (over: Parameters<typeof track>[2], films?: Parameters<typeof track>[3]) =>
      said([student("s1", "Ari", [track("s1", "hinge", over, films), sway])], { drills });
    expect(alone(OUTSIDE)).toEqual([]);
    expect(alone({ position: "edge" })).toEqual([]);
    expect(alone({ ...owned, watch: WATCH })).toEqual([]);
    expect(alone(owned, { days: ["2026-07-19"] })).toEqual([]);
    const entry = [student("s1", "Ari", [track("s1", "hinge", owned), sway])];
    expect(said(entry, { drills: [...drills, drill("s1", "hip-sway", "2026-06-01")] })).toEqual([]);
    const slip = { ...OUTSIDE, verdict: "slip", listed: true, change: change("slip", "2026-08-03") } as const;
    expect(
      said([student("s1", "Ari", [track("s1", "hinge", owned), track("s1", "hip-sway", slip)])], { drills }),
    ).toEqual([]);
    expect(
      said([student("s1", "Ari", known(track("s1", "hinge", owned), track("s1", "hip-sway")))], { drills }),
    ).toEqual([]);
    expect(said([student("s1", "Ari")], { drills })).toEqual([]);
  });

  it("what isn't measured yet and comes next is filmed first; a coach's own choice is what was worked on", () => {
    const bare = student("s1", "Ari", [track("s1", "hinge", owned)]);
    expect(said([bare], { drills: [drill("s1", "hinge")] })).toEqual([
      "is owned since 3 Aug. Next: Trail-hand V (not measured yet: a film first).",
    ]);
    const chosen = { ...bare, work: { ...NO_WORK_FACTS, chosenId: "hinge" } };
    expect(said([chosen])).toHaveLength(1);
    const stopped = { kind: "pause", since: "2026-08-25", until: null } as const;
    expect(said([{ ...chosen, work: { ...chosen.work, stop: stopped } }])).toEqual([]);
  });

  it("owned before inside", () => {
    const of = (id: string, over: Parameters<typeof track>[2]) =>
      student(id, id, [track(id, "hinge", over), track(id, "hip-sway", OUTSIDE)]);
    const drills = ["s1", "s2"].map((id) => drill(id, "hinge"));
    expect(findReady(words, source([of("s1", {}), of("s2", owned)], { drills })).map(({ alias }) => alias)).toEqual([
      "s2",
      "s1",
    ]);
  });
});
