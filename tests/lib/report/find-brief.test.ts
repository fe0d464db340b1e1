import { describe, expect, it } from "vitest";
import { findBrief } from "@/lib/report/find-brief";
import type { TrackSummary } from "@/lib/report/track-summary";
import { wordsFor } from "@/lib/words/catalogue";
import { change, drill, OUTSIDE, source, student, track, WATCH } from "./brief-parts";

const words = wordsFor("en");
const SIX = ["2026-05-04", "2026-06-01", "2026-07-06", "2026-08-03", "2026-08-24", "2026-08-30"];

describe("the coach's order", () => {
  it("pain, slip, look again, ready, newly proved, films that can't tell, no gain, away", () => {
    const gain = { verdict: "gain", listed: true, change: change("gain", "2026-08-03") } as const;
    const slip = { ...OUTSIDE, verdict: "slip", listed: true, change: change("slip", "2026-08-03") } as const;
    const of = (id: string, ...tracks: TrackSummary[]) => student(id, id, tracks);
    const given = source(
      [
        of("away", track("away", "hinge", {}, { days: ["2026-06-01"] })),
        of("stalled", track("stalled", "hinge", OUTSIDE)),
        of(
          "blocked",
          track(
            "blocked",
            "hinge",
            {},
            { days: SIX, marks: ["used", "used", "used", "used", "set-aside", "set-aside"] },
          ),
        ),
        of("gain", track("gain", "hinge", { ...gain, position: "edge" })),
        of("ready", track("ready", "hinge"), track("ready", "hip-sway", { position: "edge" })),
        of("watch", track("watch", "hinge", { ownedSince: "2026-03-22", watch: WATCH })),
        of("slip", track("slip", "hinge", slip)),
        of("pain", track("pain", "hinge")),
      ],
      {
        drills: [drill("ready", "hinge")],
        pains: [{ id: "p1", studentId: "pain", day: "2026-08-30", place: "back" }],
      },
    );
    expect(findBrief(words, given).map(({ word, studentId }) => `${word} ${studentId}`)).toEqual(
      ["pain", "slip", "watch", "ready", "gain", "blocked", "stalled", "away"].map((word) => `${word} ${word}`),
    );
  });

  it("no two lines have one key", () => {
    const given = source(
      ["s1", "s2"].map((id) => student(id, "Sam", [track(id, "hinge", { ...OUTSIDE, settleIfReal: null })])),
    );
    const keys = findBrief(words, given).map(({ key }) => key);
    expect(keys).toHaveLength(4);
    expect(new Set(keys).size).toBe(4);
  });
});
