import type { Verdict } from "@/lib/domain/track-verdict";
import type { Policy } from "./policy";
import { type HeldEvidence, provedDirection, type StretchEvidence, stillHolds } from "./proved-direction";

/** How a proved change came about, and from where on it is surely over. */
export interface NewLevel {
  readonly shape: "step" | "gradual";
  /** Index of the first session that surely lies on the new level. */
  readonly surelyFrom: number;
}

/** What one look offers to the decision; each answer may be computed when asked. */
export interface LookFacts {
  /** Limit that evidence has to reach at this look and at the one before. */
  readonly limit: number;
  /** Whether its session adds to the evidence: one set aside repeats the look before. */
  readonly adds: boolean;
  /** Evidence of the sessions from index `start` up to this look; null: too few of them. */
  evidence(start: number): StretchEvidence | null;
  /** The new level of the change seen from `start` on; asked only where that change is proved. */
  newLevel(start: number): NewLevel;
  /** The word for a proved change, under the goal of the day on which it was proved. */
  wordOf(claim: Claim): Verdict;
  /** Whether any change is proved to be smaller than the smallest worthwhile one. */
  steady(): Verdict & ("steady" | "open");
}

/** A proved change as it stands at a look. */
export interface Claim {
  /** First session of the stretch that proves it: 0, or the first surely new one of the claim before. */
  readonly start: number;
  readonly direction: "up" | "down";
  /** Position of the look at which it was proved. */
  readonly provedAt: number;
  /** Its new level, as known when it was proved. */
  readonly newLevel: NewLevel;
}

/** What is claimed at one look. */
export interface LookClaims {
  /** In order; the last is the change in force, those before it are settled by it. */
  readonly claims: readonly Claim[];
  /** First session of the stretch on which the word rests. */
  readonly start: number;
  /** Evidence of that stretch; no evidence at all where there are too few sessions. */
  readonly evidence: StretchEvidence;
}

const NOTHING: StretchEvidence = { logBayesFactor: 0, directionUp: 0.5 };

/** The evidence of a stretch at a look, held against what the look asks: more of a stretch that a proved change began. */
export function heldBy(look: LookFacts, start: number, policy: Policy): HeldEvidence {
  return { evidence: look.evidence(start), limit: look.limit + (start > 0 ? policy.limitFurther : 0) };
}

/**
 * The claims after one more look.
 *
 * A further change is looked for among the sessions that surely lie on the latest proved level, so only after a proof:
 * an unchanged season meets no more chances of a false word. What goes on in the direction of a gradual change is that
 * change, not a further one. The latest claim stays while its evidence keeps the hold limit in its direction; a proof
 * the other way replaces it; else it is withdrawn, and the one before has to hold.
 */
function claimsAfter(
  before: readonly Claim[],
  looks: { readonly now: LookFacts; readonly before: LookFacts | undefined },
  at: number,
  policy: Policy,
): readonly Claim[] {
  const look = looks.now;
  const claimFrom = (start: number): Claim | null => {
    const earlier = () => (looks.before === undefined ? null : heldBy(looks.before, start, policy));
    const direction = provedDirection(heldBy(look, start, policy), earlier, policy);
    return direction === null ? null : { start, direction, provedAt: at, newLevel: look.newLevel(start) };
  };
  const inForce = before.at(-1);
  const further = claimFrom(inForce?.newLevel.surelyFrom ?? 0);
  const goesOn = inForce?.newLevel.shape === "gradual" && further?.direction === inForce.direction;
  if (further !== null && !goesOn) return [...before, further];
  const claims = [...before];
  for (let latest = claims.at(-1); latest !== undefined; latest = claims.at(-1)) {
    if (stillHolds(latest.direction, look.evidence(latest.start), policy)) break;
    claims.pop();
    const turned = claimFrom(latest.start);
    if (turned !== null) return [...claims, turned];
  }
  return claims;
}

/** The look of the session before the latest that added to the evidence; undefined: there is none. */
export function lookBefore(looks: readonly LookFacts[], at: number): LookFacts | undefined {
  let latest = at;
  while (latest > 0 && !looks[latest]?.adds) latest--;
  return looks.slice(0, latest).findLast((look) => look.adds);
}

/**
 * What is claimed at every look of a track, from the evidence alone.
 *
 * @param looks one a session, in date order; a look must answer from the sessions up to it
 * @returns one entry a look, same order; an entry depends on the looks up to it, so a shorter track says the same
 */
export function decideClaims(looks: readonly LookFacts[], policy: Policy): readonly LookClaims[] {
  const said: LookClaims[] = [];
  let claims: readonly Claim[] = [];
  looks.forEach((now, at) => {
    claims = claimsAfter(claims, { now, before: lookBefore(looks, at) }, at, policy);
    const start = claims.at(-1)?.start ?? 0;
    said.push({ claims, start, evidence: now.evidence(start) ?? NOTHING });
  });
  return said;
}

/** The word of one look: that of the latest claim; without one, whether the track is proved to hold. */
export function decideWord(look: LookFacts, said: LookClaims): Verdict {
  const latest = said.claims.at(-1);
  return latest === undefined ? look.steady() : look.wordOf(latest);
}

/**
 * Evidence to word: the verdict at every look of a track, one entry a look.
 *
 * Order: gain or slip of the latest proved change (steady where it is neither better nor worse), then steady, then
 * open.
 */
export function decideWords(looks: readonly LookFacts[], policy: Policy): readonly Verdict[] {
  const said = decideClaims(looks, policy);
  return looks.map((look, at) => decideWord(look, said[at] as LookClaims));
}
