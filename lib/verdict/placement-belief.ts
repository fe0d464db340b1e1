import { normalCdf } from "@/lib/stats/normal-distribution";
import type { SharedShift, ShiftBelief } from "@/lib/stats/shared-shift";
import type { FilmedSession } from "./fingerprint-residuals";
import { FINGERPRINT } from "./fingerprint-thresholds";

/** Beliefs in their order: as the record has it; the phone stood elsewhere; all leans changed alike. */
const BELIEFS = ["record", "moved", "alike"] as const;

/** Variances of what the session's and the reference's placements leave open, degrees squared; roll of both. */
export interface PlacementSpread {
  readonly own: number;
  readonly reference: number;
  readonly roll: number;
}

/** One number for each side of the line. */
export interface Sides {
  readonly above: number;
  readonly below: number;
}

/**
 * What the records of a session's and the reference's placements leave open.
 *
 * @param now the session last; before it those that it is weighed with
 */
export function placementSpread(now: readonly FilmedSession[], reference: readonly FilmedSession[]): PlacementSpread {
  const session = now.at(-1) as FilmedSession;
  const isShared = (other: FilmedSession): boolean => other.label !== null && other.label === session.label;
  // What the reference shares with the session's own placement cancels.
  const kept = 1 - reference.filter(isShared).length / reference.length;
  const [own, usual] = [meanVariances(now, 1 / now.length), meanVariances(reference, 1 / reference.length, isShared)];
  const carried = FINGERPRINT.carriedSd ** 2 * (1 / now.length + 1 / reference.length);
  return {
    own: kept ** 2 * own.shift,
    reference: usual.shift,
    roll: usual.roll + kept ** 2 * own.roll + carried,
  };
}

/** Variances of the mean error of some sessions, each of weight `each`: those of one label share one error. */
function meanVariances(
  sessions: readonly FilmedSession[],
  each: number,
  isLeftOut: (session: FilmedSession) => boolean = () => false,
): { readonly shift: number; readonly roll: number } {
  const shares = new Map<string, { shift: number; roll: number }>();
  sessions.forEach((session, at) => {
    if (isLeftOut(session)) return;
    const name = session.label === null ? `${at}` : `label ${session.label}`;
    const share = shares.get(name) ?? { shift: 0, roll: 0 };
    shares.set(name, { shift: share.shift + each * session.shiftSd, roll: share.roll + each * session.rollSd });
  });
  const sum = (of: "shift" | "roll"): number =>
    [...shares.values()].reduce((total, share) => total + share[of] ** 2, 0);
  return { shift: sum("shift"), roll: sum("roll") };
}

/** The three beliefs about shift and roll, in the order of `BELIEFS`. */
export function beliefsOf({ own, reference, roll }: PlacementSpread): readonly ShiftBelief[] {
  const { movedShare, carriedShare, movedSd, movedRollSd, carriedChangeSd } = FINGERPRINT;
  return [
    { variances: [own + reference, roll], weight: (1 - movedShare) * (1 - carriedShare) },
    { variances: [movedSd ** 2 + reference, roll + movedRollSd ** 2], weight: movedShare },
    { variances: [own + reference, roll + carriedChangeSd ** 2], weight: (1 - movedShare) * carriedShare },
  ];
}

/** Weight of any one set of so many own changes among `count` fundamentals: most days few change, on busy ones many. */
export function changeWeights(count: number): readonly number[] {
  const { busyDays, busyShare, changeShare, mostChanges } = FINGERPRINT;
  return Array.from({ length: Math.min(count, mostChanges) + 1 }, (_, size) => {
    const of = (share: number): number => share ** size * (1 - share) ** (count - size);
    return (1 - busyDays) * of(changeShare) + busyDays * of(busyShare);
  });
}

/** A session's shared shift and what it rests on. */
export interface Weighed {
  readonly shift: SharedShift;
  readonly beliefs: readonly ShiftBelief[];
  readonly spread: PlacementSpread;
  /** Of several placements the records only say where they stood on average: what the session alone says of its own; null: it is alone. */
  readonly byRecord: Sides | null;
}

/**
 * What is believed of the session's own placement, the reference's part of the shift taken out: its mean, the chances that
 * it is off by more than the limit on either side, and that it is within while something else moved the fundamentals alike.
 */
export function placementNow({ shift, beliefs, spread, byRecord }: Weighed, limit: number) {
  let [mean, above, below, otherwise] = [0, 0, 0, 0];
  const record = { weight: 0, above: 0, below: 0 };
  shift.weights.forEach((weight, component) => {
    const belief = component % beliefs.length;
    const total = (beliefs[belief] as ShiftBelief).variances[0];
    const share = total > 0 ? (total - spread.reference) / total : 0;
    const centre = share * (shift.means[component] as number);
    const sd = Math.sqrt(share ** 2 * (shift.variances[component] as number) + share * spread.reference);
    mean += weight * centre;
    const tails =
      sd > 0
        ? { above: normalCdf((centre - limit) / sd), below: normalCdf((-limit - centre) / sd) }
        : { above: 0, below: 0 };
    if (BELIEFS[belief] === "record") {
      record.weight += weight;
      record.above += weight * tails.above;
      record.below += weight * tails.below;
    } else {
      above += weight * tails.above;
      below += weight * tails.below;
      otherwise += weight * (1 - tails.above - tails.below);
    }
  });
  const of = (part: number): number => (record.weight > 0 ? part / record.weight : 0);
  const own: Sides = byRecord ?? { above: of(record.above), below: of(record.below) };
  return {
    mean,
    above: above + record.weight * own.above,
    below: below + record.weight * own.below,
    otherwise,
    byRecord: own,
  };
}
