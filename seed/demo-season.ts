import { dayNumber } from "@/lib/domain/calendar-day";
import { findFundamental } from "@/lib/domain/catalogue";
import type { Fundamental, FundamentalId, View } from "@/lib/domain/fundamental";
import { cameraError, drawCameras, type TrueCamera } from "./demo-camera";
import { LEAD_HEEL } from "./demo-drills";
import { usualNoise } from "./demo-noise";
import { DEMO_SEASON_START, type StudentPlan, type TrackPlan } from "./demo-plan";
import { levelAt } from "./level-path";
import { normal, type Random, randomFrom } from "./random";
import { roundTo, type SimulatedSession, simulateSeason } from "./simulate";

/** One fundamental at one session as it was read: one value a swing, null where not measurable. */
export interface ReadTrack {
  readonly fundamentalId: FundamentalId;
  /** One entry a session; null: this fundamental wasn't read. */
  readonly sessions: readonly (readonly (number | null)[] | null)[];
}

/** What a student's season came to. */
export interface ReadSeason {
  readonly tracks: readonly ReadTrack[];
  /** Solid strikes of the balls counted, one entry a session. */
  readonly solid: readonly (number | null)[];
}

/** Stream numbers beside those of the tracks, which count from 0. */
const STREAMS = { cameras: 1000, strikes: 1001, topTilt: 1002 } as const;

/** Streams of one student; the next student's begin after them, so that equal seeds share nothing. */
const STREAMS_EACH = 10_000;

function streamOf(plan: StudentPlan, seed: number, stream: number): Random {
  return randomFrom(seed, Number(plan.id.slice(1)) * STREAMS_EACH + stream);
}

/** A fundamental of the demo academy; throws on one that it doesn't have. */
export function requireFundamental(id: FundamentalId): Fundamental {
  const found = findFundamental(id, [LEAD_HEEL]);
  if (found === undefined) throw new RangeError(`the demo has no such fundamental: ${id}`);
  return found;
}

type Cameras = readonly Partial<Record<View, TrueCamera>>[];

function errorsOf(cameras: Cameras, fundamental: Fundamental): number[] {
  return cameras.map((drawn) => {
    const camera = drawn[fundamental.view];
    return camera === undefined ? 0 : cameraError(camera, fundamental);
  });
}

/** The position at which an aid holds the level still lies beside the path, so aided sessions are moved afterwards. */
function aidedBy(plan: StudentPlan, track: TrackPlan): number[] {
  return plan.sessions.map((session, i) =>
    track.aidedLevel !== null && session.circumstance === "aid-in-view" ? track.aidedLevel - levelAt(track.path, i) : 0,
  );
}

function simulateTrack(plan: StudentPlan, track: TrackPlan, cameras: Cameras, random: Random): SimulatedSession[] {
  const fundamental = requireFundamental(track.fundamentalId);
  const usual = usualNoise(track.fundamentalId);
  const start = dayNumber(DEMO_SEASON_START);
  return simulateSeason(
    {
      days: plan.sessions.map((session) => start + session.day),
      swingCounts: plan.sessions.map((session) => session.swings),
      path: track.path,
      noise: {
        daySd: usual.daySd * plan.wildness,
        correlation: plan.correlation,
        neighbour: "session",
        swingSd: usual.swingSd * plan.wildness,
        readerSd: fundamental.readerSd,
        tails: "normal",
        spreadChange: null,
      },
      camera: { kind: "given", errors: errorsOf(cameras, fundamental) },
      rounding: usual.rounding,
      misreading: { share: 0.004, size: 6 },
      oddSession: null,
    },
    random,
  );
}

/** Drops what wasn't filmed, missed or can't be measured. */
function asRead(
  plan: StudentPlan,
  track: TrackPlan,
  values: readonly (readonly number[])[],
  random: Random,
): ReadTrack {
  const { view } = requireFundamental(track.fundamentalId);
  const moved = aidedBy(plan, track);
  const { rounding } = usualNoise(track.fundamentalId);
  return {
    fundamentalId: track.fundamentalId,
    sessions: plan.sessions.map((session, i) => {
      const missed = random.uniform() < track.missed;
      const read = (values[i] as readonly number[]).map((value) =>
        random.uniform() < track.notMeasurable ? null : roundTo(value + (moved[i] as number), rounding),
      );
      return missed || session.cameras[view] === undefined ? null : read;
    }),
  };
}

/** Side tilt at the top: what the set-up was, what was kept of it, and errors of its own reading. */
function topTilt(
  setup: readonly SimulatedSession[],
  kept: readonly SimulatedSession[],
  cameras: Cameras,
  random: Random,
): number[][] {
  const fundamental = requireFundamental("top-tilt");
  const errors = errorsOf(cameras, fundamental);
  return setup.map((session, i) =>
    session.truth.swings.map((swing, s) =>
      roundTo(
        swing +
          ((kept[i] as SimulatedSession).truth.swings[s] as number) +
          (errors[i] as number) +
          fundamental.readerSd * normal(random),
        usualNoise("top-tilt").rounding,
      ),
    ),
  );
}

/** Where the phone truly stood in each session of a student, by view. */
export function trueCameras(plan: StudentPlan, seed: number): Cameras {
  return drawCameras(plan.sessions, streamOf(plan, seed, STREAMS.cameras));
}

/** The season of one student, determined by the plan and the seed. */
export function readSeason(plan: StudentPlan, seed: number): ReadSeason {
  const cameras = trueCameras(plan, seed);
  const simulated = new Map<FundamentalId, readonly SimulatedSession[]>();
  const tracks: ReadTrack[] = [];
  plan.tracks.forEach((track, i) => {
    const random = streamOf(plan, seed, i);
    const sessions = simulateTrack(plan, track, cameras, random);
    simulated.set(track.fundamentalId, sessions);
    if (track.fundamentalId === "tilt-kept") return;
    tracks.push(
      asRead(
        plan,
        track,
        sessions.map((session) => session.swings),
        random,
      ),
    );
  });
  const [setup, kept] = [simulated.get("setup-tilt"), simulated.get("tilt-kept")];
  const keptPlan = plan.tracks.find((track) => track.fundamentalId === "tilt-kept");
  if (setup && kept && keptPlan) {
    const random = streamOf(plan, seed, STREAMS.topTilt);
    tracks.push(
      asRead(plan, { ...keptPlan, fundamentalId: "top-tilt" }, topTilt(setup, kept, cameras, random), random),
    );
  }
  const strikes = streamOf(plan, seed, STREAMS.strikes);
  const solid = plan.sessions.map((session) => {
    if (session.balls === null) return null;
    return Array.from({ length: session.balls }, () => strikes.uniform() < session.solidShare).filter(Boolean).length;
  });
  return { tracks, solid };
}
