import type { Session } from "@/lib/domain/session";

/** The contact of one session: solid strikes of the balls that were hit, both counted. */
export interface ContactCount {
  readonly day: string;
  readonly solid: number;
  /** 1 or more. */
  readonly balls: number;
}

/** A count that doesn't enter the share, and why. */
export interface ApartCount extends ContactCount {
  readonly why: "aided" | "set-aside";
}

/** The sessions of one club group by what their contact says. */
export interface ContactCounts {
  /** Those that enter the share, in order of time. */
  readonly counted: readonly ContactCount[];
  /** Counted as well, but with an aid, in a lesson or set aside; in order of time. */
  readonly apart: readonly ApartCount[];
  /** Sessions without a count. A number of balls is never made up for them. */
  readonly uncounted: number;
}

/**
 * The contact counts of one club group.
 *
 * @param sessions of one student, in order of time
 * @param days first and last day taken in, `YYYY-MM-DD`; a season's promise holds within one season
 * @returns a session enters the share only when solid strikes and balls are both stated, a ball was hit, nothing aided it
 *   and nobody set it aside. A camera that stood wrong doesn't touch a count
 * @throws RangeError for more solid strikes than balls, or a count below 0
 */
export function contactCounts(
  sessions: readonly Session[],
  clubGroup: string,
  days: { readonly from: string; readonly to: string },
): ContactCounts {
  const counted: ContactCount[] = [];
  const apart: ApartCount[] = [];
  let uncounted = 0;
  for (const session of sessions) {
    if (session.clubGroup !== clubGroup || session.day < days.from || session.day > days.to) continue;
    const count = countOf(session);
    if (count === null) uncounted++;
    else if (session.setAsideReason !== null) apart.push({ ...count, why: "set-aside" });
    else if (session.circumstance !== "unaided") apart.push({ ...count, why: "aided" });
    else counted.push(count);
  }
  return { counted, apart, uncounted };
}

function countOf({ day, solid, balls }: Session): ContactCount | null {
  if (solid === null || balls === null || balls === 0) return null;
  if (!(solid >= 0 && solid <= balls)) throw new RangeError(`${solid} of ${balls} balls can't be solid`);
  return { day, solid, balls };
}
