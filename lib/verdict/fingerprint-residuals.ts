import { HIGH_SENSITIVITY } from "@/lib/capture/camera-limits";
import { signedSensitivity } from "@/lib/domain/camera-direction";
import type { Fundamental } from "@/lib/domain/fundamental";
import { huberCentre } from "@/lib/stats/huber-centre";
import { replicateSd } from "@/lib/stats/replicate-sd";
import type { ShiftItem } from "@/lib/stats/shared-shift";
import { FINGERPRINT } from "./fingerprint-thresholds";
import { POLICY } from "./policy";

/** One fundamental of one session of one view, used by its record. */
export interface FilmedFundamental {
  readonly fundamental: Fundamental;
  /** In the fundamental's unit, at least one. */
  readonly swings: readonly number[];
  /** Sd of the camera error that the record states, in the unit. */
  readonly captureSd: number;
  readonly reader: string;
  /** Only sessions of one era are compared: a track that began anew forgets its level. */
  readonly era: string;
}

/** One session of one student, club group and view. */
export interface FilmedSession {
  readonly id: string;
  /** Sessions of one label share one placement of the phone; null: one of its own. */
  readonly label: string | null;
  /** What the record leaves open of the placement, degrees: yaw or the offset's angle, and roll. */
  readonly shiftSd: number;
  readonly rollSd: number;
  /** Degrees by which the record itself says that the phone stood off; 0: it says nothing of the kind. */
  readonly recordedOff: number;
  readonly fundamentals: readonly FilmedFundamental[];
}

/** One fundamental's departure from its usual level. */
export interface Departure extends ShiftItem {
  readonly fundamental: Fundamental;
}

/** By how much a degree off moves it, with its sign: yaw face-on, the offset's angle down the line. */
export function shiftLoading(fundamental: Fundamental): number {
  const { yaw, offset } = signedSensitivity(fundamental);
  return fundamental.view === "face-on" ? yaw : offset;
}

/** Whether a phone off to the side moves it much, and it is known which way. */
export function isWitness(fundamental: Fundamental): boolean {
  return Math.abs(shiftLoading(fundamental)) >= HIGH_SENSITIVITY;
}

/** Whether a phone off to the side leaves it as good as alone. */
function isProof(fundamental: Fundamental): boolean {
  const { yaw, offset } = fundamental.sensitivity;
  return (fundamental.view === "face-on" ? yaw : offset) < HIGH_SENSITIVITY;
}

/**
 * The fundamentals of a session that can tell the camera from the student.
 *
 * A difference of two others says nothing new where both are there: top less setup is in the pair already. One that the
 * phone moves much, nobody knows which way, is left out.
 */
export function telling(session: FilmedSession): readonly FilmedFundamental[] {
  const there = new Set<string>(session.fundamentals.map((each) => each.fundamental.id));
  return session.fundamentals.filter(({ fundamental }) => {
    const derived = fundamental.derivedFrom?.every((part) => there.has(part)) ?? false;
    return !derived && (isWitness(fundamental) || isProof(fundamental));
  });
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * How far each telling fundamental of a session lies from its usual level, and how sure that is.
 *
 * Level: robust centre of the reference sessions' robust means. Variance: day-to-day sd (a customary share of the swing
 * sd, mended by the scatter of the reference sessions beyond swings and stated camera), swings with reading by their
 * number, and the offset between readers. No learned noise enters: a new model changes nothing that was said. The
 * camera's own part is left out: it is shared, and believed in as such.
 *
 * @param now the session, and before it those of the same placement, all weighed alike; at least one
 * @param reference earlier sessions, date order; a fundamental that fewer than the least of them have is left out
 * @returns in the order of the session's fundamentals, in their units
 */
export function departures(now: readonly FilmedSession[], reference: readonly FilmedSession[]): readonly Departure[] {
  const current = now.at(-1);
  if (current === undefined) throw new RangeError("departures need a session: 0");
  return telling(current).flatMap((entry) => {
    const alike = (session: FilmedSession): readonly FilmedFundamental[] =>
      session.fundamentals.filter((each) => each.fundamental.id === entry.fundamental.id && each.era === entry.era);
    const usual = reference.flatMap(alike);
    return usual.length < FINGERPRINT.referenceLeast ? [] : [departure(entry, now.flatMap(alike), usual)];
  });
}

function departure(
  entry: FilmedFundamental,
  now: readonly FilmedFundamental[],
  usual: readonly FilmedFundamental[],
): Departure {
  const { fundamental } = entry;
  const measured = replicateSd(
    [...usual, ...now].map((each) => each.swings),
    fundamental.readerSd,
    null,
  );
  const swingSd = Math.max(fundamental.readerSd, measured.own ?? FINGERPRINT.swingFromReader * fundamental.readerSd);
  const centre = (each: FilmedFundamental): number => huberCentre(each.swings, FINGERPRINT.fullReach * swingSd);
  const swingPart = (each: FilmedFundamental): number => swingSd ** 2 / each.swings.length;
  const customary = (POLICY.dayFromSwing * swingSd) ** 2;
  const levels = usual.map(centre);
  const sessionSd = Math.sqrt(customary + mean(usual.map(swingPart)));
  const level = huberCentre(
    levels,
    FINGERPRINT.fullReach * Math.hypot(sessionSd, mean(usual.map((each) => each.captureSd))),
  );
  const beyond = usual.reduce(
    (sum, each, at) => sum + ((levels[at] as number) - level) ** 2 - swingPart(each) - each.captureSd ** 2,
    0,
  );
  const dayVariance =
    (FINGERPRINT.dayWeight * customary + Math.max(0, beyond)) / (FINGERPRINT.dayWeight + usual.length - 1);
  const others = usual.filter((each) => each.reader !== entry.reader).length / usual.length;
  const offset = POLICY.readerOffset * fundamental.readerSd * others;
  const variance =
    dayVariance * (1 / now.length + 1 / usual.length) +
    mean(now.map(swingPart)) / now.length +
    mean(usual.map(swingPart)) / usual.length +
    offset ** 2;
  const { roll } = signedSensitivity(fundamental);
  return {
    fundamental,
    residual: mean(now.map(centre)) - level,
    variance,
    loadings: [shiftLoading(fundamental), roll],
    changeVariance: FINGERPRINT.changeSize ** 2 * (dayVariance + mean(usual.map(swingPart))),
  };
}
