import { HIGH_SENSITIVITY } from "@/lib/capture/camera-limits";
import type { Fundamental, View } from "@/lib/domain/fundamental";
import { sharedShift } from "@/lib/stats/shared-shift";
import { type Departure, departures, type FilmedSession, isWitness, telling } from "./fingerprint-residuals";
import { FINGERPRINT } from "./fingerprint-thresholds";
import { beliefsOf, changeWeights, placementNow, placementSpread, type Sides, type Weighed } from "./placement-belief";

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

/**
 * The camera's fingerprint in the sessions of one student, club group and view.
 *
 * Each session is held against earlier usual ones, of other placements where enough are known: a wrong placement moves its
 * fundamentals in proportion to their sensitivities, while a student changes one by one, or in every lean alike. Sessions
 * of one placement are weighed together, and so are sessions in a row that each look as if they shared a shift to the same
 * side; none of these counts as usual. A phone is named when, with all of that weighed, it stood off on one side by more
 * than a square phone may, or than its record says, with probability `named`; at least `fewestTogether` fundamentals have
 * to be known, `fewestWitnesses` of them moved much by a phone off to the side, and one of these not by a roll: leans
 * alone can't tell yaw, roll and a student who leans otherwise from setup to impact. Where they moved so and nothing can
 * tell, that is said.
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
  /** Side of the shift where there may well be one; 0: it counts as usual. */
  readonly side: number;
  /** If its placement is as its record leaves it: chances that it is off by more than the limit, on either side. */
  readonly byRecord: Sides;
}

function worthAsking(session: FilmedSession): boolean {
  const known = telling(session).map((each) => each.fundamental);
  const moved = known.filter((each) => isWitness(each) || Math.abs(each.sensitivity.roll) >= HIGH_SENSITIVITY);
  return known.length >= FINGERPRINT.fewestTogether && moved.length >= FINGERPRINT.fewestWitnesses;
}

function askedOf(view: View, session: FilmedSession, before: readonly Asked[]): Asked {
  const most = FINGERPRINT.referenceMost;
  const usual = before.filter((each) => each.side === 0).map((each) => each.session);
  const elsewhere = usual.slice(-2 * most).filter((each) => each.label !== session.label);
  if (session.label !== null && elsewhere.length >= FINGERPRINT.referenceLeast) {
    const same = before.map((each) => each.session).filter((each) => each.label === session.label);
    return weighed(view, [...same, session].slice(-most), elsewhere.slice(-most), { before: before.at(-1) });
  }
  const reference = usual.slice(-most);
  const alone = weighed(view, [session], reference, { before: before.at(-1) });
  const run = alone.side === 0 ? [] : runBefore(before, alone.side);
  if (run.length === 0) return alone;
  return weighed(view, [...run, session].slice(-most), reference, { before: before.at(-1), alone });
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
  known: { readonly before: Asked | undefined; readonly alone?: Asked },
): Asked {
  const session = now.at(-1) as FilmedSession;
  const nothing: Asked = { session, found: null, side: 0, byRecord: { above: 0, below: 0 } };
  if (reference.length < FINGERPRINT.referenceLeast) return nothing;
  const items = departures(now, reference);
  const moved = items.filter(
    (item) => Math.abs(item.loadings[0]) >= HIGH_SENSITIVITY || Math.abs(item.loadings[1]) >= HIGH_SENSITIVITY,
  );
  if (items.length < FINGERPRINT.fewestTogether || moved.length < FINGERPRINT.fewestWitnesses) return nothing;
  const spread = placementSpread(now, reference);
  const beliefs = beliefsOf(spread);
  const shift = sharedShift(items, beliefs, changeWeights(items.length));
  const byRecord = known.alone?.byRecord ?? null;
  return finding(view, session, items, { shift, beliefs, spread, byRecord }, known.before);
}

function finding(
  view: View,
  session: FilmedSession,
  items: readonly Departure[],
  known: Weighed,
  before: Asked | undefined,
): Asked {
  const { above, below, otherwise, mean, byRecord } = placementNow(
    known,
    // What the record says itself is counted already.
    Math.max(session.recordedOff, view === "face-on" ? FINGERPRINT.offFromYaw : FINGERPRINT.offFromOffset),
  );
  const probability = Math.max(above, below);
  const shared = probability + otherwise;
  const { changed } = known.shift;
  const along = (latent: 0 | 1): readonly Departure[] =>
    items.filter((item, at) => (changed[at] as number) < 0.5 && Math.abs(item.loadings[latent]) >= HIGH_SENSITIVITY);
  const witnesses = along(0);
  const leans = along(1);
  const jumped = (list: readonly Departure[]) =>
    list.map(({ fundamental, residual }) => ({ fundamental, by: residual }));
  const freeOfRoll = witnesses.some((item) => Math.abs(item.loadings[1]) < HIGH_SENSITIVITY);
  const side = shared < FINGERPRINT.suspected ? 0 : Math.sign(sideOf(items, changed));
  const runOf = (kind: Fingerprint["kind"]): string =>
    before?.found?.kind === kind && before.side === side ? before.found.run : session.id;
  if (probability >= FINGERPRINT.named && witnesses.length >= FINGERPRINT.fewestWitnesses && freeOfRoll) {
    return {
      session,
      side,
      byRecord,
      found: { kind: "camera", view, offBy: mean, probability, jumped: jumped(witnesses), run: runOf("camera") },
    };
  }
  if (shared < FINGERPRINT.named || leans.length < FINGERPRINT.fewestWitnesses)
    return { session, side, byRecord, found: null };
  const found = { view, offBy: mean, probability: shared, jumped: jumped(leans), run: runOf("not-told-apart") };
  return { session, side, byRecord, found: { kind: "not-told-apart", ...found } };
}

/** Which way the fundamentals moved together: their departures along what a phone off would do to them. */
function sideOf(items: readonly Departure[], changed: readonly number[]): number {
  return items.reduce(
    (sum, { residual, variance, loadings: [shift, roll] }, at) =>
      sum + ((1 - (changed[at] as number)) * (shift || roll) * residual) / variance,
    0,
  );
}
