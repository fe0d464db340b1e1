import type { Viewer } from "@/app/_server/gate";
import { insertSession } from "@/db/write/sessions";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { StudentScope } from "@/lib/domain/scope";
import { NOTHING_SEEN } from "@/lib/domain/session";
import type { EnteredSession } from "@/lib/domain/session-entry";

/** Films of the student, ten days apart, the last of them ten days ago. */
export const SESSIONS = 8;

/** The value first read: 80-odd with a tail of figures that nothing else on a page has. */
export const firstValue = (session: number, swing: number): number => 80 + session + swing / 10 + 0.037;

/** The day of each film. */
export function filmDays(viewer: Viewer): string[] {
  const start = dayNumber(viewer.today) - 80;
  return Array.from({ length: SESSIONS }, (_, at) => dayFromNumber(start + 10 * at));
}

/** One face-on film of a day with values of the hinge, one a swing. */
export function enterFilm(
  viewer: Viewer,
  scope: StudentScope,
  film: {
    readonly id: string;
    readonly day: string;
    readonly reference: string | null;
    readonly now: string;
    /** Absent: irons. */
    readonly clubGroup?: ClubGroup;
  },
  values: readonly number[],
): void {
  const capture = { view: "face-on", placement: "unknown", placementLabel: null, squareness: "unknown" } as const;
  const rest = { offBy: null, setAsideReason: null, seen: NOTHING_SEEN, placedBy: null };
  const entered: EnteredSession = {
    ...({
      day: film.day,
      sequence: 1,
      clubGroup: film.clubGroup ?? "iron",
      club: null,
      reader: viewer.name,
      circumstance: "unaided",
    } as const),
    ...{ aid: null, stanceWidthCm: null, daysSincePractice: null, marks: [], note: null, solid: null, balls: null },
    ...{ setAsideReason: null, statedCaptureSds: [] },
    captures: [{ ...capture, ...rest, filmReference: film.reference }],
    swings: values.map((value, at) => ({
      number: at + 1,
      note: null,
      readings: [{ fundamentalId: "hinge", value, typed: String(value), unit: "deg", signRule: "neutral" } as const],
    })),
  };
  const made = insertSession(viewer.db, scope, entered, { now: film.now, newId: () => film.id, batchId: null });
  if (made.kind !== "inserted") throw new Error(`there is such a film: ${film.id}`);
}

/** Eight films of three swings: the last without a reference, the one before it entered just now. */
export function fillSeason(viewer: Viewer, scope: StudentScope): void {
  filmDays(viewer).forEach((day, at) => {
    const reference = at === SESSIONS - 1 ? null : `shelf ${at}`;
    const now = at === SESSIONS - 2 ? new Date().toISOString() : `${day}T18:00:00.000Z`;
    enterFilm(
      viewer,
      scope,
      { id: `film${at}`, day, reference, now },
      [1, 2, 3].map((swing) => firstValue(at, swing)),
    );
  });
}
