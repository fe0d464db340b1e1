import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { BUILT_IN, type BuiltInId } from "@/lib/domain/catalogue";
import { type Capture, NOTHING_SEEN, type Session } from "@/lib/domain/session";
import type { StudentRecord } from "@/lib/verdict/track-history";

const LEVELS: Readonly<Partial<Record<BuiltInId, number>>> = {
  "trail-v": 60,
  "setup-tilt": 5,
  hinge: 84,
  "hip-sway": 3,
  "top-tilt": 4,
  "impact-tilt": 12,
};
/** What one degree of yaw does to each, the hip sway too little to see. */
const BY_YAW: Readonly<Partial<Record<BuiltInId, number>>> = {
  "setup-tilt": 0.7,
  hinge: 0.7,
  "top-tilt": 0.7,
  "impact-tilt": 0.7,
};
const WAVER = [0, 1, -1, 0, 1, -1, 0, 0, 1];

/** One film: its true yaw, what was read from it (absent: all), and by how much its record calls it off. */
export interface Film {
  readonly yaw: number;
  readonly only?: readonly BuiltInId[];
  readonly offBy?: number;
}

/** Square films ten days apart, five swings each, from which yaw moves what it moves and nothing else happens. */
export function filmedRecord(films: readonly Film[], change: Partial<StudentRecord> = {}): StudentRecord {
  const sessions = films.map(
    (_, at): Session => ({
      id: `f${at}`,
      studentId: "s",
      day: dayFromNumber(dayNumber("2026-03-01") + 10 * at),
      sequence: 1,
      clubGroup: "iron",
      club: null,
      reader: "Wren",
      circumstance: "unaided",
      aid: null,
      stanceWidthCm: null,
      daysSincePractice: null,
      marks: [],
      note: null,
      solid: null,
      balls: null,
      setAsideReason: null,
      groupId: null,
    }),
  );
  return {
    student: { id: "s", alias: "Eli", birthYear: 2011, hand: "left", zone: "UTC", clubs: "" },
    sessions,
    captures: films.map((film, at): Omit<Capture, "statedSd"> & { readonly sessionId: string } => ({
      sessionId: `f${at}`,
      view: "face-on",
      placement: "anew",
      placementLabel: null,
      squareness: film.offBy === undefined ? "square" : "off",
      offBy: film.offBy ?? null,
      setAsideReason: null,
      seen: NOTHING_SEEN,
      placedBy: null,
      filmReference: null,
    })),
    statedCaptureSds: [],
    readings: films.flatMap((film, at) =>
      (film.only ?? (Object.keys(LEVELS) as BuiltInId[])).flatMap((id, place) =>
        [-1, 1, 0, 1, -1].map((around, swing) => ({
          sessionId: `f${at}`,
          swing: swing + 1,
          fundamentalId: id,
          value: (LEVELS[id] ?? 0) + (BY_YAW[id] ?? 0) * film.yaw + around + 0.5 * (WAVER[(at + place) % 9] as number),
          typed: "",
          signRule: "neutral" as const,
        })),
      ),
    ),
    events: [],
    bands: [],
    lookNoise: [],
    fundamentals: BUILT_IN,
    seasonStart: "0001-01-01",
    ...change,
  };
}

/** Six films with nothing wrong. */
export const SQUARE_FILMS: readonly Film[] = Array.from({ length: 6 }, () => ({ yaw: 0 }));
