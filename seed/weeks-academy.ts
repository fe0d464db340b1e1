import { type Database, inTransaction, openDatabase } from "@/db/client";
import { migrateDb } from "@/db/migrate";
import { insertAcademy } from "@/db/write/academies";
import { insertOwnFundamental } from "@/db/write/own-fundamentals";
import { insertSession } from "@/db/write/sessions";
import { insertStudent } from "@/db/write/students";
import type { ClubKind } from "@/lib/domain/club-group";
import type { FundamentalId } from "@/lib/domain/fundamental";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { LEAD_HEEL } from "./demo-drills";
import { enterStudent, seasonDay } from "./demo-entries";
import { DEMO_SEASON_START, type StudentPlan } from "./demo-plan";
import { ALWAYS_READ, CLUBS, OFTEN_READ, quietSession, quietTrack, SELDOM_READ } from "./demo-quiet";
import { between, normal, oneOf, randomFrom, whole } from "./random";
import { swingCounts, unevenDays } from "./simulate";

/** Seed of the academy by weeks; the first one tried. */
export const WEEKS_SEED = 602;

/** Weeks after which its roster is looked at: the first films, the first that can be compared, a whole term. */
export const LOOKED_AT_WEEKS = [2, 6, 20] as const;

/** Films of a whole season of twenty weeks, more than fall into it: one every six to sixteen days. */
const FILMS = 24;
const STUDENTS = 60;
const ID = "weeks";
const scope = { academyId: ID, userId: null, students: "all" } as unknown as AcademyScope;

const FIRST = "An Bel Cor Dav Em Fen Gra Hol Iv Jo Kel Lin".split(" ");
const LAST = "a dy is ma o".split(" ");

function readOf(random: ReturnType<typeof randomFrom>): readonly FundamentalId[] {
  return [
    ...ALWAYS_READ,
    ...OFTEN_READ.filter(() => random.uniform() < 0.6),
    ...SELDOM_READ.filter(() => random.uniform() < 0.2),
  ];
}

/** A student who is filmed every six to sixteen days; one in seven comes in later, within six weeks. */
function weeksPlan(number: number): StudentPlan {
  const random = randomFrom(WEEKS_SEED, 100 + number);
  const clubGroup: ClubKind = number % 6 === 5 ? "driver" : number % 6 === 4 ? "short-iron" : "iron";
  const birthYear = random.uniform() < 0.4 ? whole(random, 2009, 2016) : whole(random, 1950, 2005);
  const wildness = Math.exp(0.18 * normal(random));
  const first = random.uniform() < 1 / 7 ? whole(random, 14, 42) : whole(random, 0, 9);
  const days = unevenDays(first, FILMS, 6, 16, random);
  const swings = swingCounts(days.length, 3, 6, random);
  return {
    id: `s${String(number + 1).padStart(2, "0")}`,
    alias: `${FIRST[Math.floor(number / LAST.length)]}${LAST[number % LAST.length]}`,
    birthYear,
    hand: random.uniform() < 0.1 ? "left" : "right",
    zone: "Europe/Berlin",
    club: oneOf(random, CLUBS[clubGroup]),
    clubGroup,
    signRule: "neutral",
    wildness,
    correlation: between(random, 0, 0.3),
    consentGivenBy: birthYear >= 2009 ? "parent, on paper" : "in person, on paper",
    sessions: days.map((day, at) => quietSession(day, swings[at] as number, random)),
    tracks: readOf(random).map((id) => quietTrack(id, { clubGroup, wildness }, days.length, random)),
    heights: [],
    events: [],
    assignments: [],
    corrections: [],
    expected: [],
  };
}

function insertOne(db: Database, number: number, today: string): number {
  const { student, consents, sessions } = enterStudent(weeksPlan(number), WEEKS_SEED);
  const now = `${DEMO_SEASON_START}T07:00:00.000Z`;
  insertStudent(db, scope, student, consents[0] ?? null, { now, newId: () => `c-${student.id}` });
  const films = sessions.filter(({ session }) => session.day <= today);
  for (const { id, session } of films)
    insertSession(db, { ...scope, studentId: student.id } as unknown as StudentScope, session, {
      now: `${session.day}T18:00:00.000Z`,
      newId: () => id,
      batchId: null,
    });
  return films.length;
}

/**
 * An academy of sixty students as it is on file so many weeks after its first day: the same season at whatever week, cut
 * off at its day. It isn't judged.
 */
export async function fillWeeksAcademy(
  file: string,
  weeks: number,
): Promise<{ readonly students: number; readonly films: number; readonly today: string }> {
  const today = seasonDay(7 * weeks);
  const db = openDatabase(file);
  try {
    await migrateDb(db);
    const now = `${DEMO_SEASON_START}T07:00:00.000Z`;
    const films = inTransaction(db, () => {
      insertAcademy(db, {
        ...{ id: ID, name: `Week ${weeks}`, ownerName: "Robin", zone: "Europe/Berlin", locale: "en", kind: "demo" },
        ...{ fixedToday: today, seasonStart: DEMO_SEASON_START, createdAt: now },
      });
      insertOwnFundamental(db, scope, { id: LEAD_HEEL.id, definition: JSON.stringify(LEAD_HEEL) }, now);
      return Array.from({ length: STUDENTS }, (_, number) => insertOne(db, number, today)).reduce((a, b) => a + b);
    });
    db.sqlite.exec("ANALYZE");
    return { students: STUDENTS, films, today };
  } finally {
    db.close();
  }
}
