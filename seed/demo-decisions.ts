import type { Database } from "@/db/client";
import { insertDrillDecision } from "@/db/write/drill-decisions";
import type { DrillDecision } from "@/lib/domain/drill-decision";
import type { StudentScope } from "@/lib/domain/scope";
import { seasonDay } from "./demo-entries";
import { DEMO_READER } from "./demo-plan";

/** What was decided on a day on which a drill was measured again; days are the season's. */
interface Decided {
  readonly studentId: string;
  readonly assignmentId: string;
  readonly decision: DrillDecision;
  readonly why: string;
  readonly day: number;
  readonly next: number;
}

const DECISIONS: readonly Decided[] = [
  {
    ...{ studentId: "s02", assignmentId: "s02-a1", decision: "keep", day: 45, next: 108 },
    why: "Three weeks, and nothing can be told yet. Go on.",
  },
  {
    ...{ studentId: "s02", assignmentId: "s02-a1", decision: "keep", day: 108, next: 188 },
    why: "It goes the right way, slowly.",
  },
  {
    ...{ studentId: "s03", assignmentId: "s03-a1", decision: "keep", day: 129, next: 204 },
    why: "Too few films to tell.",
  },
  {
    ...{ studentId: "s04", assignmentId: "s04-a2", decision: "keep", day: 103, next: 193 },
    why: "Practised on a few days only.",
  },
  {
    ...{ studentId: "s06", assignmentId: "s06-a1", decision: "keep", day: 60, next: 130 },
    why: "Better already. Go on to the band.",
  },
  {
    ...{ studentId: "s06", assignmentId: "s06-a1", decision: "change-goal", day: 130, next: 208 },
    why: "It has levelled off just short of the band.",
  },
];

/** What was decided about the drills that run. No verdict rests on it. */
export function insertDemoDecisions(db: Database, scopeOf: (studentId: string) => StudentScope): void {
  for (const { studentId, day, next, ...decided } of DECISIONS) {
    const on = seasonDay(day);
    const row = { ...decided, day: on, next: seasonDay(next), who: DEMO_READER, recordedAt: `${on}T18:00:00.000Z` };
    if (insertDrillDecision(db, scopeOf(studentId), row) !== "recorded") throw new Error(`not decided: ${decided.why}`);
  }
}
