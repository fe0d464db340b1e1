import { signedSensitivity } from "@/lib/domain/camera-direction";
import type { BuiltInId } from "@/lib/domain/catalogue";
import { findFundamental } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { FilmedSession } from "@/lib/verdict/fingerprint-residuals";
import { usualNoise } from "@/seed/demo-noise";
import { between, normal, type Random, whole } from "@/seed/random";
import { roundTo } from "@/seed/simulate";

/** What is true of one simulated face-on season. */
export interface FilmedSeason {
  readonly sessions: number;
  /** What is measured; tilt kept and the top tilt follow from one another. */
  readonly fundamentals: readonly BuiltInId[];
  /** True yaw at a session beside what the record lets pass, degrees. */
  readonly yaw: (session: number) => number;
  /** True level of a fundamental at a session, less where it began. */
  readonly moved: (id: BuiltInId, session: number) => number;
  /** Share of sessions without a camera record. */
  readonly unknown: number;
  readonly label: (session: number) => string | null;
}

export const FACE_ON: readonly BuiltInId[] = [
  "setup-tilt",
  "top-tilt",
  "impact-tilt",
  "hinge",
  "hip-sway",
  "head-drift",
  "tilt-kept",
];

export function builtIn(id: BuiltInId): Fundamental {
  return findFundamental(id, []) as Fundamental;
}

/** A season of one student with the customary noise; the true yaw of each session stands beside it. */
export function filmedSeason(
  season: FilmedSeason,
  random: Random,
): { readonly sessions: readonly FilmedSession[]; readonly yaws: readonly number[] } {
  const wildness = between(random, 0.8, 1.5);
  const yaws: number[] = [];
  const sessions = Array.from({ length: season.sessions }, (_, at): FilmedSession => {
    const square = random.uniform() >= season.unknown;
    const [shiftSd, rollSd] = square ? [1, 0.5] : [4, 1];
    const yaw = season.yaw(at) + shiftSd * normal(random);
    const roll = rollSd * normal(random);
    yaws.push(yaw);
    const swings = whole(random, 3, 6);
    const path = new Map<BuiltInId, number[]>();
    for (const id of season.fundamentals) {
      if (id === "tilt-kept") continue;
      const own = id === "top-tilt" ? "tilt-kept" : id;
      const { daySd, swingSd } = usualNoise(own);
      const day = season.moved(id, at) + wildness * daySd * normal(random);
      const before = id === "top-tilt" ? (path.get("setup-tilt") ?? []) : [];
      path.set(
        id,
        Array.from({ length: swings }, (_, swing) => day + (before[swing] ?? 0) + wildness * swingSd * normal(random)),
      );
    }
    const read = new Map<BuiltInId, number[]>();
    for (const [id, values] of path) {
      const { yaw: byYaw, roll: byRoll } = signedSensitivity(builtIn(id));
      const camera = byYaw * yaw + byRoll * roll;
      const { readerSd } = builtIn(id);
      read.set(
        id,
        values.map((value) => roundTo(value + camera + readerSd * normal(random), usualNoise(id).rounding)),
      );
    }
    const [setup, top] = [read.get("setup-tilt"), read.get("top-tilt")];
    if (season.fundamentals.includes("tilt-kept") && setup && top)
      read.set(
        "tilt-kept",
        top.map((value, swing) => value - (setup[swing] as number)),
      );
    return {
      id: `${at}`,
      label: season.label(at),
      shiftSd,
      rollSd,
      recordedOff: 0,
      fundamentals: [...read].map(([id, values]) => {
        const fundamental = builtIn(id);
        const { yaw: byYaw, roll: byRoll } = fundamental.sensitivity;
        return {
          fundamental,
          swings: values,
          captureSd: Math.min(Math.hypot(byYaw * shiftSd, byRoll * rollSd), fundamental.cameraSdUnknown),
          reader: "Wren",
          era: "now",
        };
      }),
    };
  });
  return { sessions, yaws };
}
