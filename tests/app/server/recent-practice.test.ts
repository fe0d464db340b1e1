import { afterAll, beforeAll, expect, it } from "vitest";
import { practiceCounter } from "@/app/_server/drill/drill-since";
import type { StudentViewer } from "@/app/_server/gate";
import { recentPractice } from "@/app/_server/season/recent-practice";
import { readAssignments } from "@/db/read/drills";
import { readPractice } from "@/db/read/practice";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { insertPractice } from "@/db/write/practice";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { admitNew } from "./corrected-season";
import { startAcademy } from "./own-academy-data";

let mine: StudentViewer;
let remove: () => void;
const day = (back: number): string => dayFromNumber(dayNumber(mine.today) - back);

beforeAll(async () => {
  const started = await startAcademy();
  remove = started.remove;
  mine = await admitNew(started.viewer, "Dot", "right");
});
afterAll(() => remove());

function practised(assignmentId: string, backs: readonly number[]): void {
  const rest = { assignmentId, minutes: 10, balls: null, felt: null, source: "told", who: "Lark" } as const;
  insertPractice(
    mine.db,
    mine.student,
    backs.map((back) => ({
      id: `${assignmentId}-${back}`,
      day: day(back),
      ...rest,
      recordedAt: `${day(0)}T10:00:00Z`,
    })),
  );
}

it("two drills at once, 2 of 7 days each for two weeks: 4 and 4 practised of 8 asked for, though on the same four days", () => {
  const { db, scope, student, today } = mine;
  insertDrill(db, scope, { id: "wall", name: "Wall", fundamentalId: "hinge", how: "", cautions: "" });
  for (const id of ["one", "two"]) {
    const given = { drillId: "wall", fundamentalId: "hinge", start: day(13), end: null, dose: "", daysAWeek: 2 };
    insertAssignment(db, student, { id, ...given });
    practised(id, [1, 3, 5, 7]);
  }
  // Logged before the drill was given: nothing was asked for then.
  practised("two", [20]);
  const facts = { practice: readPractice(db, student), drills: readAssignments(db, student), events: [], today };
  const recent = recentPractice({ ...facts, count: practiceCounter(mine) }, "hinge");
  expect(recent.logged.map((days) => new Set(days).size)).toEqual([4, 4]);
  expect(recent.asked).toBe(8);
});
