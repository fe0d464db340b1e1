import fc from "fast-check";
import { dayFromNumber } from "@/lib/domain/calendar-day";
import { CATALOGUE } from "@/lib/domain/catalogue";
import { hostileText } from "./hostile-texts";

/** ISO time in UTC. */
export const instant = fc
  .integer({ min: 0, max: 2_000_000_000 })
  .map((seconds) => new Date(seconds * 1000).toISOString());
/** `YYYY-MM-DD`. */
export const day = fc.integer({ min: 18_000, max: 22_000 }).map(dayFromNumber);
/** Any number that a column holds. */
export const value = fc
  .oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.constantFrom(0, -0, 1e-300, 12.5))
  .map((x) => (x === 0 ? 0 : x));
/** Or nothing. */
export const orNull = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: null });
const fundamentalId = fc.constantFrom(...CATALOGUE.map((entry) => entry.id), "own-heel" as const);

/** Each fundamental at most once. */
function perFundamental<T>(make: fc.Arbitrary<T>, most: number) {
  return fc
    .uniqueArray(fc.tuple(fundamentalId, make), { maxLength: most, selector: ([id]) => id })
    .map((pairs) => pairs.sort(([a], [b]) => (a < b ? -1 : 1)).map(([id, made]) => ({ ...made, fundamentalId: id })));
}

const correction = fc.record({
  kind: fc.constantFrom("change" as const, "void" as const),
  value: orNull(value),
  typed: hostileText,
  who: hostileText,
  why: hostileText,
  correctedAt: instant,
});

const reading = fc.record({
  reader: hostileText,
  reread: fc.constant(0),
  value: orNull(value),
  typed: hostileText,
  unit: fc.constantFrom("deg" as const, "pct-stance" as const),
  signRule: fc.constantFrom("neutral" as const, "picture" as const),
  enteredAt: instant,
  corrections: fc.array(correction, { maxLength: 3 }).map((list) => list.map((one) => ({ ...one, place: 0 }))),
});

/** A session as drawn. */
export const session = fc.record({
  id: fc.uuid(),
  day,
  club: orNull(fc.constantFrom("7-iron", "old =1")),
  reader: hostileText,
  circumstance: fc.constantFrom("unaided" as const, "aid-in-view" as const),
  aid: orNull(hostileText),
  stanceWidthCm: orNull(value),
  daysSincePractice: orNull(fc.integer({ min: 0, max: 99 })),
  marks: fc.constantFrom("", "wind", "wind,tired"),
  note: orNull(hostileText),
  solid: orNull(fc.integer({ min: 0, max: 5 })),
  setAsideReason: orNull(hostileText),
  createdAt: instant,
  groupId: orNull(fc.uuid()),
  placementLabel: orNull(hostileText),
  film: orNull(hostileText),
  lean: orNull(value),
  statedCaptureSds: perFundamental(fc.record({ sd: fc.double({ min: 0, max: 9, noNaN: true }).map((x) => x || 0) }), 2),
  swings: fc.array(fc.record({ note: orNull(hostileText), readings: perFundamental(reading, 4) }), { maxLength: 4 }),
});

/** A drawn session as an archive has it. */
export function sessionOf(made: typeof session extends fc.Arbitrary<infer T> ? T : never, sequence: number) {
  const { placementLabel, film, lean, swings, solid, ...facts } = made;
  const nothing = { offBy: null, acrossStickSlope: null, plumbLean: null, lensHeightCm: null, handsHeightCm: null };
  const seen = { distanceCm: null, besideHandsCm: null, framesPerSecond: null, shutterPerSecond: null };
  return {
    ...facts,
    sequence,
    clubGroup: "iron" as const,
    saidClubGroup: "iron" as const,
    solid,
    balls: solid === null ? null : 5,
    captures: [
      {
        ...nothing,
        ...seen,
        view: "face-on" as const,
        placement: "anew" as const,
        placementLabel,
        squareness: "unknown" as const,
        pointingStickLean: lean,
        placedBy: film,
        setAsideReason: null,
        filmReference: film,
      },
    ],
    swings: swings.map((swing, at) => ({ ...swing, number: at + 1 })),
    looks: [{ fundamentalId: "hinge" as const, clubGroup: "iron" as const, noiseModelName: "hinge/iron#1" }],
  };
}
