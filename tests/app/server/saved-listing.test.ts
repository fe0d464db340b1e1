import { afterAll, beforeAll, expect, it } from "vitest";
import { admitToStudent, type StudentViewer } from "@/app/_server/gate";
import { loadSaved } from "@/app/_server/session/load-saved";
import { loadAsideDone } from "@/app/_server/session/load-set-aside";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { type HandingAcademy, startHandingAcademy } from "../../trust/handing-academy";
import { addTo } from "./inviting";
import { enterFilm } from "./reread-season";

/** Tracks of others that show nothing: among so many the last film puts the gain on the list; alone it stood there before. */
const OTHERS = 40;
const LEVELS = [80, 81, 80, 81, 80, 90, 91, 90, 91];
const LAST = `nia${LEVELS.length - 1}`;

let academy: HandingAcademy;
let bo: StudentViewer;

function film(studentId: string, id: string, back: number, values: readonly number[]): void {
  const { ada } = academy;
  const scope = admitToStudent(ada, studentId);
  if (!scope) throw new Error("nobody");
  const day = dayFromNumber(dayNumber(ada.today) - back);
  enterFilm(ada, scope, { id, day, reference: null, now: `${day}T18:00:00.000Z` }, values);
}

beforeAll(async () => {
  academy = await startHandingAcademy();
  const { nia } = academy;
  LEVELS.forEach((level, at) => {
    film(nia, `nia${at}`, 10 * (LEVELS.length - at), [level - 1, level, level + 1]);
  });
  for (let at = 0; at < OTHERS; at++) film(addTo(academy.ada, `Other${at}`), `other${at}`, 20, [81, 82, 83]);
  bo = academy.as("bo");
});
afterAll(() => academy.remove());

it("what a film changed is worked out over the whole academy before and after, whoever of it looks", async () => {
  const ada: StudentViewer = { ...academy.ada, student: bo.student };
  const page = await loadSaved(bo, LAST);
  expect(page.changed.lines.map(({ text }) => text)).toEqual([expect.stringMatching(/^Now a real gain/)]);
  expect(page).toEqual(await loadSaved(ada, LAST));
  const done = await loadAsideDone(bo, LAST, "session", undefined);
  expect(done).toEqual(await loadAsideDone(ada, LAST, "session", undefined));
  expect(JSON.stringify([page, done])).not.toContain("Other");
});
