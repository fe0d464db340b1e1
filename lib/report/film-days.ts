import type { Session } from "@/lib/domain/session";

/** What of a session decides whether its day counts. */
export type FilmedSession = Pick<Session, "day" | "clubGroup" | "circumstance" | "setAsideReason">;

/**
 * The different days on which a student was filmed unaided and the film wasn't set aside, with the clubs shown, in order: two
 * sessions of one day are one, whatever page counts them.
 *
 * @param clubGroup null: with whatever clubs
 */
export function filmDays(source: {
  readonly sessions: readonly FilmedSession[];
  readonly clubGroup: string | null;
}): readonly string[] {
  const { sessions, clubGroup } = source;
  const counted = sessions.filter(
    (session) =>
      (clubGroup === null || session.clubGroup === clubGroup) &&
      session.circumstance === "unaided" &&
      session.setAsideReason === null,
  );
  return [...new Set(counted.map(({ day }) => day))].sort();
}
