import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { decideDrill } from "@/app/_server/drill/decide-desk";
import { loadDecide } from "@/app/_server/drill/load-decide";
import type { StudentViewer } from "@/app/_server/gate";
import { addEvent } from "@/app/_server/season/event-desk";
import { readDrillDecisions } from "@/db/read/drill-decisions";
import { readAssignmentLog } from "@/db/read/drills";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { admitNew, formOf } from "./corrected-season";
import { startAcademy } from "./own-academy-data";

let mine: StudentViewer;
let remove: () => void;
const ago = (days: number): string => dayFromNumber(dayNumber(mine.today) - days);

beforeAll(async () => {
  const started = await startAcademy();
  remove = started.remove;
  mine = await admitNew(started.viewer, "Dot", "right");
  const { db, scope, student } = mine;
  insertDrill(db, scope, { id: "wall", name: "Wall", fundamentalId: "hinge", how: "", cautions: "" });
  for (const id of ["one", "two"]) {
    const of = { drillId: "wall", fundamentalId: "hinge", start: ago(14), end: null, dose: "" };
    insertAssignment(db, student, { id, ...of, remeasureOn: ago(0) });
  }
  expect((await addEvent(mine, formOf({ kind: "pause", day: ago(1), endDay: ago(-3) }))).kind).toBe("added");
});
afterAll(() => remove());

const goesOn = (decision: string) => ({ decision, why: "half way", next: ago(-14) });
const onFile = () => ({
  decisions: readDrillDecisions(mine.db, mine.student).length,
  next: readAssignmentLog(mine.db, mine.student).map(({ remeasureOn }) => remeasureOn),
});

it("in a pause a drill goes on by the coach’s word alone, kept as it is or with another goal", async () => {
  const form = (await loadDecide(mine, "one", randomUUID()))?.form;
  expect(form?.parts[0]?.margin).toBe("Stop first");
  for (const said of ["A pause is in force", "no drill through it", "licensed clinician"])
    expect(form?.parts[0]?.explains).toContain(said);
  const before = onFile();
  for (const decision of ["keep", "change-goal"]) {
    const refused = decideDrill(mine, "one", formOf(goesOn(decision)));
    if (refused.kind !== "refused") throw new Error("went on in a pause");
    const back = (await loadDecide(mine, "one", refused.draftId))?.form;
    expect(back?.refusal).toContain("stop first");
    expect(back?.parts[0]?.fields[0]?.error).toContain("Tick it only where it is so");
    expect(back?.parts[1]?.fields.find(({ name }) => name === "why")?.value).toBe("half way");
  }
  expect(onFile()).toEqual(before);
  expect(decideDrill(mine, "one", formOf({ ...goesOn("keep"), goOn: "yes" })).kind).toBe("decided");
  expect(onFile()).toEqual({ decisions: 1, next: [ago(-14), ago(0)] });
});

it("ending it needs no word, and without a pause nothing is asked", async () => {
  expect(decideDrill(mine, "one", formOf({ decision: "stop", why: "it hurts" })).kind).toBe("decided");
  mine.db.sqlite.exec("UPDATE event SET end_day = day");
  expect((await loadDecide(mine, "two", randomUUID()))?.form?.parts).toHaveLength(1);
  expect(decideDrill(mine, "two", formOf(goesOn("keep"))).kind).toBe("decided");
});
