import { dayNumber } from "@/lib/domain/calendar-day";
import type { Practice } from "@/lib/domain/practice";
import type { HistorySession, TrackHistory } from "./session-history";

interface Seen<Kind extends string> {
  readonly kind: Kind;
  readonly entry: HistorySession;
}

interface Dated<Kind extends string> extends Seen<Kind> {
  /** Since the last practice. */
  readonly days: number;
  /** Who says so: the session itself, or the log of practice. */
  readonly by: "said" | "logged";
}

/**
 * What a film says of what stays. `rested`: unaided and used, so many days or more after the last practice; `soon`: used, and
 * nearer to it; `same-day`: in a lesson or right after practice, drawn and never judged; `unknown`: used, and nobody said
 * when practice was.
 */
export type RetentionFilm = Dated<"rested"> | Dated<"soon"> | Seen<"same-day"> | Seen<"unknown">;

/** What is asked of a track's films. */
export interface RetentionAsked {
  /** First day taken in: of the drill, or on which the new level stood. */
  readonly from: string;
  /** First day from which the log of practice is believed to be kept; practice before it says nothing of rest. */
  readonly loggedFrom: string;
  /** Days after the last practice from which a film counts as rested. */
  readonly rest: number;
}

function restOf(
  entry: HistorySession,
  days: readonly string[],
): { readonly days: number; readonly by: "said" | "logged" } | null {
  const { day, daysSincePractice } = entry.session;
  if (daysSincePractice !== null) return { days: daysSincePractice, by: "said" };
  const last = days.findLast((practised) => practised <= day);
  return last === undefined ? null : { days: dayNumber(day) - dayNumber(last), by: "logged" };
}

/**
 * The films of a track from a day on, told apart by how long practice had rested. Where a session doesn't say it, the log of
 * practice does, whatever the practice was of: a day that nobody logged may have been practised, so `logged` is weaker than
 * `said`.
 *
 * @param practice of the student, in any order; what was taken back counts for nothing
 * @returns in order of time; films set aside, filmed with an aid, or from before the track began anew aren't among them
 */
export function retentionFilms(
  history: Pick<TrackHistory, "sessions">,
  practice: readonly Practice[],
  { from, loggedFrom, rest }: RetentionAsked,
): readonly RetentionFilm[] {
  const days = practice
    .filter(({ voidedAt, day }) => voidedAt === null && day >= loggedFrom)
    .map(({ day }) => day)
    .sort();
  return history.sessions.flatMap((entry): RetentionFilm[] => {
    if (entry.index === null || entry.session.day < from) return [];
    if (entry.apart !== null)
      return entry.apart.kind === "circumstance" && entry.apart.circumstance === "in-lesson"
        ? [{ kind: "same-day", entry }]
        : [];
    const rested = restOf(entry, days);
    if (rested === null) return [{ kind: "unknown", entry }];
    return [{ kind: rested.days >= rest ? "rested" : "soon", entry, ...rested }];
  });
}
