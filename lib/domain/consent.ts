import { type CalendarDay, dayFromNumber, dayNumber } from "./calendar-day";

/** What a consent is given for: `measure`, that films are read and kept; `share`, that others are shown what came of it. */
export const CONSENT_KINDS = ["measure", "share"] as const;

/** What a consent is given for. */
export type ConsentKind = (typeof CONSENT_KINDS)[number];

/** Whose word a consent is; a guardian's holds until the student may speak for themselves. */
export const GIVERS = ["guardian", "student"] as const;

/** A consent: who gave it, from when, until when, and whether it was withdrawn. */
export interface Consent {
  readonly kind: ConsentKind;
  readonly givenBy: string;
  readonly giverIs: (typeof GIVERS)[number];
  readonly from: CalendarDay;
  /** The last day on which it holds; null: no end was said. */
  readonly until: CalendarDay | null;
  /** The first day on which it holds no more; null: it was not withdrawn. */
  readonly withdrawnOn: CalendarDay | null;
}

/** Of whom a consent is asked, and on which day. */
export interface ConsentAsked {
  readonly day: CalendarDay;
  /** Null: not known. A guardian's word holds then, because nothing says that it holds no more. */
  readonly birthYear: number | null;
  /** Age in years from which the student's own word is asked for; the academy says it, and local rules come first. */
  readonly ownConsentAge: number;
}

/** Why a consent ends: its last day has passed, it was withdrawn, or the student may speak for themselves. */
export type ConsentEnd = "lapsed" | "withdrawn" | "own-age";

/**
 * Where the consents of one kind stand on a day.
 *
 * - `given`: in force. `until` is the last day of the days without a gap on which it is (null: no end), `ends` why it ends
 *   then, `by` the consents in force on the day.
 * - `not-yet`: none is in force, and one begins on `from`.
 * - `lapsed`, `withdrawn`, `own-age`: what ended last, and the first day without it.
 * - `none`: there was never one.
 */
export type ConsentStanding<C extends Consent = Consent> =
  | {
      readonly kind: "given";
      readonly until: CalendarDay | null;
      readonly ends: ConsentEnd | null;
      readonly by: readonly C[];
    }
  | { readonly kind: "not-yet"; readonly from: CalendarDay }
  | { readonly kind: ConsentEnd; readonly since: CalendarDay }
  | { readonly kind: "none" };

/** The days of one consent: from `from` to the day before `end`; null: no end. */
interface Span<C> {
  readonly consent: C;
  readonly from: CalendarDay;
  readonly end: CalendarDay | null;
  readonly why: ConsentEnd | null;
}

/**
 * The first day on which a student has surely reached an age: 1 January after the year in which the birthday falls, because
 * the year of birth alone is kept. So a guardian's word is never refused before the birthday, and is taken up to a year longer.
 *
 * @returns null where the birth year isn't known
 */
export function ownAgeDay({
  birthYear,
  ownConsentAge,
}: Pick<ConsentAsked, "birthYear" | "ownConsentAge">): CalendarDay | null {
  return birthYear === null ? null : `${String(birthYear + ownConsentAge + 1).padStart(4, "0")}-01-01`;
}

/** Whose word is asked for on a day: the student's own from the day on which the own age is surely reached. */
export function giverOf(asked: ConsentAsked): Consent["giverIs"] {
  const own = ownAgeDay(asked);
  return own !== null && own <= asked.day ? "student" : "guardian";
}

function spanOf<C extends Consent>(consent: C, asked: ConsentAsked): Span<C> {
  const own = consent.giverIs === "guardian" ? ownAgeDay(asked) : null;
  const after = consent.until === null ? null : dayFromNumber(dayNumber(consent.until) + 1);
  const ends: readonly (readonly [CalendarDay | null, ConsentEnd])[] = [
    [consent.withdrawnOn, "withdrawn"],
    [own, "own-age"],
    [after, "lapsed"],
  ];
  let [end, why]: [CalendarDay | null, ConsentEnd | null] = [null, null];
  for (const [day, reason] of ends) if (day !== null && (end === null || day < end)) [end, why] = [day, reason];
  return { consent, from: consent.from, end, why };
}

/** How far the days go on without a gap from those in force. */
function stretch<C>(spans: readonly Span<C>[], begun: readonly Span<C>[]): Span<C> | undefined {
  const later = (a: Span<C>, b: Span<C>): Span<C> => (a.end === null || (b.end !== null && b.end <= a.end) ? a : b);
  let [last, ...rest] = begun;
  for (const span of rest) last = last && later(last, span);
  for (const span of spans.toSorted((a, b) => (a.from < b.from ? -1 : 1)))
    if (last && last.end !== null && span.from <= last.end) last = later(last, span);
  return last;
}

/**
 * Where the consents of one kind stand on a day. One that was withdrawn, or a guardian's once the student has surely reached
 * the age of own consent, ends there, whatever its last day.
 *
 * @throws RangeError when a consent's last day is not a day that exists
 */
export function consentStanding<C extends Consent>(
  consents: readonly C[],
  kind: ConsentKind,
  asked: ConsentAsked,
): ConsentStanding<C> {
  const { day } = asked;
  const spans = consents.filter((each) => each.kind === kind).map((each) => spanOf(each, asked));
  const holding = spans.filter(({ from, end }) => end === null || end > from);
  const begun = holding.filter(({ from, end }) => from <= day && (end === null || end > day));
  const last = stretch(holding, begun);
  if (last) {
    const until = last.end === null ? null : dayFromNumber(dayNumber(last.end) - 1);
    return { kind: "given", until, ends: last.why, by: begun.map(({ consent }) => consent) };
  }
  const [coming] = holding.filter(({ from }) => from > day).toSorted((a, b) => (a.from < b.from ? -1 : 1));
  if (coming) return { kind: "not-yet", from: coming.from };
  let ended: { readonly kind: ConsentEnd; readonly since: CalendarDay } | null = null;
  for (const { end, why } of spans)
    if (end !== null && end <= day && why !== null && (ended === null || end > ended.since))
      ended = { kind: why, since: end };
  return ended ?? { kind: "none" };
}

/** Whether a consent of a kind is really in force on a day. */
export function consentInForce(consents: readonly Consent[], kind: ConsentKind, asked: ConsentAsked): boolean {
  return consentStanding(consents, kind, asked).kind === "given";
}
