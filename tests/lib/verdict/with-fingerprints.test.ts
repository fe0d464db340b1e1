import { describe, expect, it } from "vitest";
import { captureEffect } from "@/lib/capture/capture-effect";
import { BUILT_IN, type BuiltInId } from "@/lib/domain/catalogue";
import type { Capture } from "@/lib/domain/session";
import { NOTHING_SEEN } from "@/lib/domain/session";
import { type StudentRecord, type TrackHistory, trackHistories } from "@/lib/verdict/track-history";
import { filmedRecord as recordOf, SQUARE_FILMS as square } from "./filmed-record";

const tracksOf = (record: StudentRecord): readonly TrackHistory[] => trackHistories(record, "2027-01-01");
const track = (record: StudentRecord, id: BuiltInId): TrackHistory =>
  tracksOf(record).find((history) => history.fundamental.id === id) as TrackHistory;
const statedSd = (id: BuiltInId): number => {
  const fundamental = BUILT_IN.find((entry) => entry.id === id) as (typeof BUILT_IN)[number];
  const nothing = { offBy: null, seen: NOTHING_SEEN, setAsideReason: null };
  const capture = { squareness: "square", statedSd: null, ...nothing, view: fundamental.view };
  return captureEffect(capture as Capture, fundamental).captureSd;
};

describe("what a named phone does to the judged sessions", () => {
  const within = recordOf([...square, { yaw: 9 }]);
  const beyond = recordOf([...square, { yaw: 14 }]);

  it("within what a film bears: the doubt is the stated sd and .7 x the estimated degrees, by Pythagoras; the session is used", () => {
    for (const id of ["setup-tilt", "hinge", "top-tilt", "impact-tilt"] as const) {
      const { sessions, judged } = track(within, id);
      const { fingerprint, captureSd, apart } = sessions[6] as (typeof sessions)[number];
      expect(fingerprint?.kind).toBe("camera");
      expect(fingerprint?.done).toBe("widened");
      expect(Math.abs(fingerprint?.offBy ?? 0)).toBeLessThanOrEqual(10);
      expect(captureSd).toBeCloseTo(Math.hypot(statedSd(id), 0.7 * (fingerprint?.offBy ?? 0)), 12);
      expect(apart).toBeNull();
      expect(judged.sessions[6]).toMatchObject({ use: true, captureSd });
    }
  });

  it("beyond ten degrees: what a phone moves much is set aside, tilt kept and sway are used with .12 a degree more doubt", () => {
    for (const id of ["setup-tilt", "hinge", "top-tilt", "impact-tilt", "trail-v"] as const) {
      const { sessions, judged } = track(beyond, id);
      expect(sessions[6]?.fingerprint?.done).toBe("set-aside");
      expect(sessions[6]?.fingerprint?.offBy).toBeGreaterThan(10);
      expect(sessions[6]?.apart).toMatchObject({ kind: "fingerprint" });
      expect(judged.sessions[6]?.use).toBe(false);
    }
    for (const id of ["tilt-kept", "hip-sway"] as const) {
      const { sessions, judged } = track(beyond, id);
      expect(judged.sessions[6]?.use).toBe(true);
      expect(judged.sessions[6]?.captureSd).toBeCloseTo(
        Math.hypot(statedSd(id), 0.12 * (sessions[6]?.fingerprint?.offBy ?? 0)),
        12,
      );
    }
  });

  it("the sessions before it are as their records have them, and a record without it says the same of them", () => {
    const before = tracksOf(recordOf(square));
    for (const history of tracksOf(within)) {
      const same = before.find((each) => each.fundamental.id === history.fundamental.id);
      expect(history.judged.sessions.slice(0, 6)).toEqual(same?.judged.sessions);
    }
  });

  it("with two fundamentals a session nothing is asked, whatever the jump", () => {
    const two = recordOf([...square, { yaw: 9 }].map((film) => ({ ...film, only: ["setup-tilt", "hinge"] as const })));
    for (const { sessions } of tracksOf(two)) expect(sessions.every((entry) => entry.fingerprint === null)).toBe(true);
  });

  it("a reading of another fundamental can take the finding back: without the second witness the leans are not named", () => {
    const leans = ["setup-tilt", "top-tilt", "impact-tilt"] as const;
    const films = [...square, { yaw: 9 }];
    const alone = recordOf(films.map((film) => ({ ...film, only: leans })));
    expect(track(within, "setup-tilt").judged.sessions[6]?.captureSd).toBeGreaterThan(4);
    expect(track(alone, "setup-tilt").judged.sessions[6]?.captureSd).toBeCloseTo(statedSd("setup-tilt"), 12);
  });

  it("a phone recorded off by nine degrees is known: nothing is added to what its record widens", () => {
    const known = track(recordOf([...square, { yaw: 9, offBy: 9 }]), "setup-tilt").sessions[6];
    expect(known).toMatchObject({ captureWhy: "off-widened", fingerprint: null });
    expect(known?.captureSd).toBeCloseTo(Math.hypot(statedSd("setup-tilt"), 0.7 * 9), 12);
  });

  it("sds stated for single fundamentals leave little open, and are what the shift is added to", () => {
    const stated = recordOf([...square, { yaw: 9 }], {
      statedCaptureSds: ["setup-tilt", "hinge"].flatMap((fundamentalId) =>
        Array.from({ length: 7 }, (_, at) => ({ sessionId: `f${at}`, fundamentalId, sd: 0.5 })),
      ),
    });
    const { sessions } = track(stated, "setup-tilt");
    expect(sessions[6]?.captureSd).toBeCloseTo(Math.hypot(0.5, 0.7 * (sessions[6]?.fingerprint?.offBy ?? 0)), 12);
  });

  it("across a season's border the earlier sessions keep their widened doubt in what they leave behind", () => {
    const crossing = recordOf([...square, { yaw: 14 }, { yaw: 0 }], { seasonStart: "2026-05-05" });
    const { earlier, sessions } = track(crossing, "hinge");
    expect(sessions[6]?.apart?.kind).toBe("before");
    expect(earlier?.sessions[6]?.captureSd).toBeGreaterThan(7);
  });
});
