import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { countedStudents } from "@/app/_server/academy/counted-students";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { insertSession } from "@/db/write/sessions";
import { insertWaiting } from "@/db/write/waiting";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { CountedAs } from "@/lib/domain/counted-as";
import type { TrackSummary } from "@/lib/report/track-summary";
import { track } from "../../lib/report/made-roster";
import { admitNew } from "./corrected-season";
import { startAcademy } from "./own-academy-data";

let viewer: Viewer;
let remove: () => void;
const students = new Map<string, StudentViewer>();
const of = (alias: string): StudentViewer => {
  const found = students.get(alias);
  if (found === undefined) throw new Error(`no ${alias}`);
  return found;
};
const idOf = (alias: string): string => of(alias).student.studentId;
const back = (days: number): string => dayFromNumber(dayNumber(viewer.today) - days);

function film(alias: string, days: number, club: "iron" | "driver", over: { circumstance?: "in-lesson" } = {}): void {
  const made = insertSession(
    viewer.db,
    of(alias).student,
    {
      ...({ day: back(days), sequence: 1, clubGroup: club, club: null, reader: "Lark" } as const),
      ...({ circumstance: "unaided", ...over } as const),
      ...{ aid: null, stanceWidthCm: null, daysSincePractice: null, marks: [], note: null, solid: null, balls: null },
      ...{ setAsideReason: null, statedCaptureSds: [], captures: [], swings: [] },
    },
    { now: `${back(days)}T12:00:00.000Z`, newId: randomUUID, batchId: null },
  );
  if (made.kind !== "inserted") throw new Error("there is such a film");
}

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  for (const alias of ["Ada", "Bo", "Cy", "Di", "Eve"]) students.set(alias, await admitNew(viewer, alias, "right"));
  film("Ada", 3, "iron");
  film("Ada", 10, "driver");
  film("Bo", 4, "iron");
  film("Cy", 5, "iron", { circumstance: "in-lesson" });
  film("Di", 83, "iron");
  film("Eve", 84, "iron");
  const drill = { id: "d1", name: "Wall", fundamentalId: "hinge", how: "Slowly.", cautions: "" };
  insertDrill(viewer.db, viewer.scope, drill);
  const given = { id: "g1", drillId: "d1", fundamentalId: "hinge", start: back(20), end: null, dose: "" };
  insertAssignment(viewer.db, of("Ada").student, given);
  const waits = { id: "w1", fundamentalId: "hinge", fromDay: back(9), who: "Lark", recordedAt: `${back(9)}T09:00:00Z` };
  insertWaiting(viewer.db, of("Bo").student, waits);
}, 60_000);
afterAll(() => remove());

/** Ada's iron film counts, her driver's was set aside by the phone's place; she isn't settled with the driver alone. */
function tracks(): ReadonlyMap<string, readonly TrackSummary[]> {
  const made = (clubGroup: string, days: number, mark: "used" | "aside", verdict: "steady" | "open") => {
    const one = track("hinge", { verdict, settle: null, notToldApart: null, changes: [] });
    return { ...one, clubGroup, sessions: [{ date: back(days), mean: 80, mark }] } as unknown as TrackSummary;
  };
  return new Map([[idOf("Ada"), [made("iron", 3, "used", "steady"), made("driver", 10, "aside", "open")]]]);
}

function counted(as: CountedAs, club: string | null = null): readonly string[] {
  const find = countedStudents(viewer, { counted: as, club }, tracks());
  return [...students.keys()].filter((alias) => find(idOf(alias)).has(as));
}

it("by what came of a film of twelve weeks, its first day counted and the day before not", () => {
  expect(counted("film-counted")).toEqual(["Ada"]);
  expect(counted("film-phone")).toEqual(["Ada"]);
  expect(counted("film-in-lesson")).toEqual(["Cy"]);
  expect(counted("film-unread")).toEqual(["Bo", "Di"]);
});

it("by what is recorded of whoever was filmed: each is one of the three", () => {
  expect(counted("filmed-on-a-drill")).toEqual(["Ada"]);
  expect(counted("filmed-waiting")).toEqual(["Bo"]);
  expect(counted("filmed-unrecorded")).toEqual(["Cy", "Di"]);
});

it("by why a track isn't settled; with clubs only what was done with them", () => {
  expect(counted("open-no-plan")).toEqual(["Ada"]);
  expect([counted("open-no-plan", "iron"), counted("open-no-plan", "driver")]).toEqual([[], ["Ada"]]);
  expect([counted("film-counted", "driver"), counted("filmed-on-a-drill", "driver")]).toEqual([[], ["Ada"]]);
});

it("a view that doesn't ask has nobody", () => {
  const find = countedStudents(viewer, { counted: null, club: null }, tracks());
  expect([...students.keys()].map((alias) => find(idOf(alias)).size)).toEqual([0, 0, 0, 0, 0]);
});
