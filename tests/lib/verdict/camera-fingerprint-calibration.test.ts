import { describe, expect, it } from "vitest";
import type { BuiltInId } from "@/lib/domain/catalogue";
import { cameraFingerprints } from "@/lib/verdict/camera-fingerprint";
import { FINGERPRINT } from "@/lib/verdict/fingerprint-thresholds";
import { randomFrom } from "@/seed/random";
import { FACE_ON, type FilmedSeason, filmedSeason } from "./filmed-season";

const PLAIN: FilmedSeason = {
  sessions: 14,
  fundamentals: FACE_ON,
  yaw: () => 0,
  moved: () => 0,
  unknown: 0,
  label: () => null,
};
const SINCE = 9;
const changed =
  (sizes: Partial<Record<BuiltInId, number>>) =>
  (id: BuiltInId, at: number): number =>
    at < SINCE ? 0 : (sizes[id] ?? 0);

interface Score {
  readonly seasons: number;
  /** Seasons with a phone named that truly stood within 3 degrees, or off on the other side. */
  readonly falsely: number;
  /** Seasons with the phone named at the first session off, and the share of sessions named from then on. */
  readonly atFirst: number;
  readonly named: number;
  readonly untold: number;
}

function scored(seasons: number, stream: number, change: Partial<FilmedSeason>): Score {
  let [falsely, atFirst, named, untold] = [0, 0, 0, 0];
  for (let seed = 0; seed < seasons; seed++) {
    const { sessions, yaws } = filmedSeason({ ...PLAIN, ...change }, randomFrom(seed, stream));
    const found = cameraFingerprints("face-on", sessions);
    const cameras = found.flatMap((each, at) => (each?.kind === "camera" ? [{ at, offBy: each.offBy }] : []));
    const truly = (at: number): number => yaws[at] as number;
    if (
      cameras.some(({ at, offBy }) => offBy * Math.sign(truly(at)) < 0 || Math.abs(truly(at)) < FINGERPRINT.offFromYaw)
    )
      falsely++;
    if (cameras.some(({ at }) => at === SINCE)) atFirst++;
    named += cameras.filter(({ at }) => at >= SINCE).length / (PLAIN.sessions - SINCE) / seasons;
    if (found.some((each) => each?.kind === "not-told-apart")) untold++;
  }
  return { seasons, falsely, atFirst, named, untold };
}

/** Four standard errors above a share. */
const atMost = (share: number, runs: number): number => share + 4 * Math.sqrt((share * (1 - share)) / runs);

describe("calibration: students of .8 to 1.5 times the usual wavering, 3 to 6 swings, 14 sessions", () => {
  it("nothing happens, or one, two or three true changes out of proportion: 8 x 40 seasons, at most 1 % falsely named, with four standard errors 3.2 %", () => {
    const scores = [
      scored(40, 31, {}),
      scored(40, 32, { unknown: 0.5 }),
      scored(40, 33, { moved: changed({ hinge: 9 }) }),
      scored(40, 34, { moved: changed({ "impact-tilt": 5 }) }),
      scored(40, 35, { moved: changed({ "setup-tilt": 6 }) }),
      scored(40, 36, { moved: changed({ hinge: 9, "impact-tilt": -5 }) }),
      scored(40, 37, { moved: changed({ hinge: 9, "impact-tilt": 5, "hip-sway": -6 }) }),
      scored(40, 38, { moved: changed({ "setup-tilt": 4, hinge: -9, "hip-sway": -6 }) }),
    ];
    const seasons = scores.reduce((sum, score) => sum + score.seasons, 0);
    const falsely = scores.reduce((sum, score) => sum + score.falsely, 0);
    expect(falsely / seasons).toBeLessThanOrEqual(atMost(0.01, seasons));
  });

  it("a lean carried from setup to impact with the hinge put: at most 7 % named, with four standard errors 23 %; mostly said not to be told apart", () => {
    const score = scored(40, 41, { moved: changed({ "setup-tilt": 6, "impact-tilt": 6 }) });
    expect(score.falsely / score.seasons).toBeLessThanOrEqual(atMost(0.07, score.seasons));
    expect(score.untold / score.seasons).toBeGreaterThan(0.5);
  });

  it("off by 8 degrees from a day on: half of the films since are named, on either side, with a label or without", () => {
    const off = (by: number) => (at: number) => (at >= SINCE ? by : 0);
    const bench = (at: number) => (at >= SINCE ? "bench" : null);
    expect(scored(40, 51, { yaw: off(8) }).named).toBeGreaterThan(0.35);
    expect(scored(40, 52, { yaw: off(-8) }).named).toBeGreaterThan(0.35);
    expect(scored(40, 53, { yaw: off(8), label: bench }).named).toBeGreaterThan(0.4);
  });

  it("with the ball's position read too, a second witness of its own: half at the first film, three in four since", () => {
    const off = (at: number): number => (at >= SINCE ? 8 : 0);
    const score = scored(40, 54, { yaw: off, fundamentals: [...FACE_ON, "ball-position"] });
    expect(score.atFirst / score.seasons).toBeGreaterThan(0.25);
    expect(score.named).toBeGreaterThan(0.6);
  });
});
