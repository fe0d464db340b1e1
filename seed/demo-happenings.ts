import type { Database } from "@/db/client";
import { readReadBackCandidates, readReadBackItems } from "@/db/read/read-backs";
import { insertEvent } from "@/db/write/events";
import { insertPractice, type NewPractice } from "@/db/write/practice";
import { insertReadBack, updateReadBackTyped } from "@/db/write/read-backs";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { StudentScope } from "@/lib/domain/scope";
import { drawReadBack, isReadable } from "@/lib/verdict/draw-read-back";
import { DEMO_READER, DEMO_TODAY } from "./demo-plan";
import { requireFundamental } from "./demo-season";
import { type Random, randomFrom } from "./random";
import { roundTo } from "./simulate";

/** Seed of all that is drawn here; a stream a student. */
const SEED = 20260913;

/** Who practised with which drill, from when to when, how often and how long; ends are the drills' own. */
interface PracticePlan {
  readonly studentId: string;
  readonly assignmentId: string;
  readonly from: string;
  readonly to: string;
  /** Chance of practice on a day. */
  readonly share: number;
  readonly minutes: readonly [number, number];
  /** Chance that balls were hit too, and how many. */
  readonly ballShare: number;
  readonly balls: readonly [number, number];
  readonly stream: number;
}

const PRACTICE: readonly PracticePlan[] = [
  {
    ...{ studentId: "s01", assignmentId: "s01-a1", from: "2026-04-03", to: "2026-06-05", stream: 1 },
    ...{ share: 0.66, minutes: [8, 15], ballShare: 0.4, balls: [10, 30] },
  },
  {
    ...{ studentId: "s04", assignmentId: "s04-a1", from: "2026-03-28", to: "2026-05-20", stream: 2 },
    ...{ share: 0.55, minutes: [10, 15], ballShare: 0, balls: [0, 0] },
  },
  {
    ...{ studentId: "s04", assignmentId: "s04-a2", from: "2026-05-22", to: DEMO_TODAY, stream: 3 },
    ...{ share: 0.3, minutes: [5, 15], ballShare: 0, balls: [0, 0] },
  },
];

const evening = (day: string): string => `${day}T18:30:00.000Z`;

function between(random: Random, [least, most]: readonly [number, number], step: number): number {
  return roundTo(least + (most - least) * random.uniform(), step);
}

function daysOf(plan: PracticePlan): NewPractice[] {
  const random = randomFrom(SEED, plan.stream);
  const [first, last] = [dayNumber(plan.from), dayNumber(plan.to)];
  return Array.from({ length: last - first + 1 }, (_, at) => dayFromNumber(first + at)).flatMap((day) => {
    const [practised, length, hit, feel] = [0, 1, 2, 3].map(() => random.uniform()) as [number, number, number, number];
    const balls = between(random, plan.balls, 5);
    if (practised >= plan.share) return [];
    const minutes = roundTo(plan.minutes[0] + (plan.minutes[1] - plan.minutes[0]) * length, 1);
    const felt = feel < 0.15 ? "hard" : feel < 0.4 ? "easy" : null;
    return [
      {
        ...{ id: `${plan.assignmentId} ${day}`, day, assignmentId: plan.assignmentId, minutes, felt },
        ...{ balls: hit < plan.ballShare ? balls : null, source: "told", who: DEMO_READER, recordedAt: evening(day) },
      } as const,
    ];
  });
}

/** A pause that begins nothing anew: which student, and where it hurt. */
const PAUSED = { studentId: "s20", place: "wrist" } as const;
/** Growth of the first student, which begins nothing anew. */
const GREW = { studentId: "s01", day: "2026-06-01", note: "Two centimetres since March." } as const;
/** A measure that the student wasn't read for, read back from six films, half of it typed. */
const READ_BACK = { studentId: "s01", fundamentalId: "own-lead-heel", films: 6, each: 2, typed: 5, stream: 9 } as const;

function insertPause(db: Database, scope: StudentScope, days: readonly string[]): void {
  const gaps = days.slice(1).map((day, at) => ({ from: dayNumber(days[at] as string) + 1, to: dayNumber(day) - 1 }));
  const longest = gaps.reduce((best, gap) => (gap.to - gap.from > best.to - best.from ? gap : best));
  const [day, endDay] = [dayFromNumber(longest.from), dayFromNumber(longest.to)];
  insertEvent(
    db,
    scope,
    { id: `${scope.studentId}-pause`, kind: "injury", day, endDay, place: PAUSED.place, note: "", rebaselines: [] },
    { who: DEMO_READER, now: evening(day) },
  );
}

function insertOpenReadBack(db: Database, scope: StudentScope): void {
  const { fundamentalId, films, each, typed, stream } = READ_BACK;
  const random = randomFrom(SEED, stream);
  const { view } = requireFundamental(fundamentalId);
  const candidates = readReadBackCandidates(db, scope, { fundamentalId, view });
  const sessionIds = [...new Set(candidates.filter(isReadable).map(({ sessionId }) => sessionId))].slice(0, films);
  const items = drawReadBack(candidates, { sessionIds, each }, () => random.uniform());
  const by = { reader: DEMO_READER, who: DEMO_READER, drawnAt: `${DEMO_TODAY}T07:30:00.000Z` };
  const bare = items.map(({ swingId, filmReference }) => ({ swingId, filmReference }));
  insertReadBack(db, scope, { id: "read-back-1", fundamentalId, ...by, items: bare });
  const places = readReadBackItems(db, scope, "read-back-1").slice(0, typed);
  const values = places.map(({ place }) => ({ place, typed: String(between(random, [8, 16], 0.5)) }));
  updateReadBackTyped(db, scope, "read-back-1", values);
}

/**
 * What happened beside the films: practice of two students, growth, a pause for an injury, and an open read-back. No reading and no
 * beginning anew is among it, so that no verdict of the demo rests on any of it.
 *
 * @param filmed the days on which a student was filmed, in order
 */
export function insertDemoHappenings(
  db: Database,
  scopeOf: (studentId: string) => StudentScope,
  filmed: (studentId: string) => readonly string[],
): void {
  for (const plan of PRACTICE) insertPractice(db, scopeOf(plan.studentId), daysOf(plan));
  const { studentId, ...grew } = GREW;
  const growth = { ...grew, id: `${studentId}-growth`, kind: "growth", rebaselines: [] } as const;
  insertEvent(db, scopeOf(studentId), growth, { who: DEMO_READER, now: evening(GREW.day) });
  insertPause(db, scopeOf(PAUSED.studentId), filmed(PAUSED.studentId));
  insertOpenReadBack(db, scopeOf(READ_BACK.studentId));
}
