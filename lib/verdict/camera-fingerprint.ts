import type { Fundamental, View } from "@/lib/domain/fundamental";
import { normalCdf } from "@/lib/stats/normal-distribution";
import { type SharedShift, type ShiftBelief, sharedShift } from "@/lib/stats/shared-shift";
import { type Departure, departures, type FilmedSession, isWitness, telling } from "./fingerprint-residuals";
import { FINGERPRINT } from "./fingerprint-thresholds";

/** What a session's fundamentals, taken together, say of the phone. */
export interface Fingerprint {
  /** `camera`: the phone stood off. `not-told-apart`: the leans moved alike, by a crooked phone or by the student. */
  readonly kind: "camera" | "not-told-apart";
  readonly view: View;
  /** Degrees by which the phone seems to have stood off: yaw face-on, + toward the target; the offset's angle down the line, + on the ball's side. */
  readonly offBy: number;
  /** Probability that the phone stood off on that side; for `not-told-apart`, that the fundamentals share a shift. */
  readonly probability: number;
  /** The fundamentals that jumped together, and by how much, in their units; order of the session. */
  readonly jumped: readonly { readonly fundamental: Fundamental; readonly by: number }[];
  /** Name of the run of named sessions with the phone off on the same side. */
  readonly run: string;
}

/** From this share of a degree a degree on, a roll moves a fundamental much. */
const MUCH = 0.5;

/** Beliefs in their order: as the record has it; the phone stood elsewhere; all leans changed alike. */
const BELIEFS = ["record", "moved", "alike"] as const;

interface PlacementSpread {
  /** Variances of what the session's and the reference's placements leave open, degrees squared. */
  readonly own: number;
  readonly reference: number;
  readonly roll: number;
}

/**
 * The camera's fingerprint in the sessions of one student, club group and view.
 *
 * Each session is held against earlier usual ones, of other placements where enough are known: a wrong placement moves its
 * fundamentals in proportion to their sensitivities, while a student changes one by one, or in every lean alike. Sessions
 * of one placement are weighed together, and so are sessions in a row that each look as if they shared a shift to the same
 * side; none of these counts as usual. A phone is named when, with all of that weighed, it stood off on one side by more
 * than a square phone may, or than its record says, with probability `named`; at least `fewestTogether` fundamentals have to be known,
 * `fewestWitnesses` of them moved much by a phone off to the side, and one of these not by a roll: leans alone can't tell
 * yaw, roll and a student who leans otherwise from setup to impact. Where they moved so and nothing can tell, that is said.
 *
 * @param sessions date order; each session is judged from itself and those before it, so a prefix says the same
 * @returns one entry a session, same order; null: nothing to say
 */
export function cameraFingerprints(view: View, sessions: readonly FilmedSession[]): readonly (Fingerprint | null)[] {
  const asked: Asked[] = [];
  return sessions.map((session) => {
    if (!worthAsking(session)) return null;
    const one = askedOf(view, session, asked);
    asked.push(one);
    return one.found;
  });
}

/** A session that was asked, and whether it looked as if its fundamentals shared a shift. */
interface Asked {
  readonly session: FilmedSession;
  readonly found: Fingerprint | null;
  /** Side of the shift where it is likelier than not; 0: it counts as usual. */
  readonly side: number;
}

function worthAsking(session: FilmedSession): boolean {
  const known = telling(session).map((each) => each.fundamental);
  const moved = known.filter((each) => isWitness(each) || Math.abs(each.sensitivity.roll) >= MUCH);
  return known.length >= FINGERPRINT.fewestTogether && moved.length >= FINGERPRINT.fewestWitnesses;
}

function askedOf(view: View, session: FilmedSession, before: readonly Asked[]): Asked {
  const most = FINGERPRINT.referenceMost;
  const usual = before.filter((each) => each.side === 0).map((each) => each.session);
  const elsewhere = usual.slice(-2 * most).filter((each) => each.label !== session.label);
  if (session.label !== null && elsewhere.length >= FINGERPRINT.referenceLeast) {
    const same = before.map((each) => each.session).filter((each) => each.label === session.label);
    return weighed(view, [...same, session].slice(-most), elsewhere.slice(-most), before.at(-1));
  }
  const reference = usual.slice(-most);
  const alone = weighed(view, [session], reference, before.at(-1));
  const run = alone.side === 0 ? [] : runBefore(before, alone.side);
  return run.length === 0 ? alone : weighed(view, [...run, session].slice(-most), reference, before.at(-1));
}

/** The sessions in a row, up to the latest, that looked shifted to one side. */
function runBefore(before: readonly Asked[], side: number): readonly FilmedSession[] {
  let first = before.length;
  while (first > 0 && before[first - 1]?.side === side) first--;
  return before.slice(first).map((each) => each.session);
}

function weighed(
  view: View,
  now: readonly FilmedSession[],
  reference: readonly FilmedSession[],
  before: Asked | undefined,
): Asked {
  const session = now.at(-1) as FilmedSession;
  const nothing: Asked = { session, found: null, side: 0 };
  if (reference.length < FINGERPRINT.referenceLeast) return nothing;
  const items = departures(now, reference);
  const moved = items.filter((item) => Math.abs(item.loadings[0]) >= MUCH || Math.abs(item.loadings[1]) >= MUCH);
  if (items.length < FINGERPRINT.fewestTogether || moved.length < FINGERPRINT.fewestWitnesses) return nothing;
  const spread = placementSpread(now, reference);
  const beliefs = beliefsOf(spread);
  const shift = sharedShift(items, beliefs, changeWeights(items.length));
  return finding(view, session, items, { shift, beliefs, spread }, before);
}

function placementSpread(now: readonly FilmedSession[], reference: readonly FilmedSession[]): PlacementSpread {
  const session = now.at(-1) as FilmedSession;
  const each = 1 / reference.length;
  // Sessions of one placement share its error; others have one each.
  const draws = session.label === null ? now.length : 1;
  let [kept, shift, roll] = [1, 0, 0];
  const shares = new Map<string, { shift: number; roll: number }>();
  for (const other of reference) {
    if (other.label === null) {
      shift += (each * other.shiftSd) ** 2;
      roll += (each * other.rollSd) ** 2;
    } else if (other.label === session.label) {
      // What it shares with the session cancels.
      kept -= each;
    } else {
      const share = shares.get(other.label) ?? { shift: 0, roll: 0 };
      shares.set(other.label, { shift: share.shift + each * other.shiftSd, roll: share.roll + each * other.rollSd });
    }
  }
  for (const share of shares.values()) {
    shift += share.shift ** 2;
    roll += share.roll ** 2;
  }
  const carried = FINGERPRINT.carriedSd ** 2 * (1 / now.length + each);
  return {
    own: (kept * session.shiftSd) ** 2 / draws,
    reference: shift,
    roll: roll + (kept * session.rollSd) ** 2 / draws + carried,
  };
}

function beliefsOf({ own, reference, roll }: PlacementSpread): readonly ShiftBelief[] {
  const { movedShare, carriedShare, movedSd, movedRollSd, carriedChangeSd } = FINGERPRINT;
  return [
    { variances: [own + reference, roll], weight: (1 - movedShare) * (1 - carriedShare) },
    { variances: [movedSd ** 2 + reference, roll + movedRollSd ** 2], weight: movedShare },
    { variances: [own + reference, roll + carriedChangeSd ** 2], weight: (1 - movedShare) * carriedShare },
  ];
}

/** Weight of any one set of so many own changes among `count` fundamentals: most days few change, on busy ones many. */
function changeWeights(count: number): readonly number[] {
  const { busyDays, busyShare, changeShare, mostChanges } = FINGERPRINT;
  return Array.from({ length: Math.min(count, mostChanges) + 1 }, (_, size) => {
    const of = (share: number): number => share ** size * (1 - share) ** (count - size);
    return (1 - busyDays) * of(changeShare) + busyDays * of(busyShare);
  });
}

interface Weighed {
  readonly shift: SharedShift;
  readonly beliefs: readonly ShiftBelief[];
  readonly spread: PlacementSpread;
}

/**
 * What is believed of the session's own placement, the reference's part of the shift taken out: its mean, the chances that
 * it is off by more than the limit on either side, and that it is within while something else moved the fundamentals alike.
 */
function placementNow({ shift, beliefs, spread }: Weighed, limit: number) {
  let [mean, above, below, otherwise] = [0, 0, 0, 0];
  shift.weights.forEach((weight, component) => {
    const belief = component % beliefs.length;
    const total = (beliefs[belief] as ShiftBelief).variances[0];
    const own = total - spread.reference;
    const share = total > 0 ? own / total : 0;
    const centre = share * (shift.means[component] as number);
    const sd = Math.sqrt(share ** 2 * (shift.variances[component] as number) + share * spread.reference);
    mean += weight * centre;
    if (sd > 0) {
      above += weight * normalCdf((centre - limit) / sd);
      below += weight * normalCdf((-limit - centre) / sd);
    }
    if (BELIEFS[belief] !== "record")
      otherwise += weight * (sd > 0 ? normalCdf((limit - centre) / sd) - normalCdf((-limit - centre) / sd) : 1);
  });
  return { mean, above, below, otherwise };
}

function finding(
  view: View,
  session: FilmedSession,
  items: readonly Departure[],
  known: Weighed,
  before: Asked | undefined,
): Asked {
  const { above, below, otherwise, mean } = placementNow(
    known,
    // What the record says itself is counted already.
    Math.max(session.recordedOff, view === "face-on" ? FINGERPRINT.offFromYaw : FINGERPRINT.offFromOffset),
  );
  const probability = Math.max(above, below);
  const shared = probability + otherwise;
  const { changed } = known.shift;
  const along = (latent: 0 | 1): readonly Departure[] =>
    items.filter((item, at) => (changed[at] as number) < 0.5 && Math.abs(item.loadings[latent]) >= MUCH);
  const witnesses = along(0);
  const leans = along(1);
  const jumped = (list: readonly Departure[]) =>
    list.map(({ fundamental, residual }) => ({ fundamental, by: residual }));
  const freeOfRoll = witnesses.some((item) => Math.abs(item.loadings[1]) < MUCH);
  const side = shared < FINGERPRINT.suspected ? 0 : Math.sign(sideOf(items, changed));
  const runOf = (kind: Fingerprint["kind"]): string =>
    before?.found?.kind === kind && before.side === side ? before.found.run : session.id;
  if (probability >= FINGERPRINT.named && witnesses.length >= FINGERPRINT.fewestWitnesses && freeOfRoll) {
    return {
      session,
      side,
      found: { kind: "camera", view, offBy: mean, probability, jumped: jumped(witnesses), run: runOf("camera") },
    };
  }
  if (shared < FINGERPRINT.named || leans.length < FINGERPRINT.fewestWitnesses) return { session, side, found: null };
  const found = { view, offBy: mean, probability: shared, jumped: jumped(leans), run: runOf("not-told-apart") };
  return { session, side, found: { kind: "not-told-apart", ...found } };
}

/** Which way the fundamentals moved together: their departures along what a phone off would do to them. */
function sideOf(items: readonly Departure[], changed: readonly number[]): number {
  return items.reduce(
    (sum, { residual, variance, loadings: [shift, roll] }, at) =>
      sum + ((1 - (changed[at] as number)) * (shift || roll) * residual) / variance,
    0,
  );
}
