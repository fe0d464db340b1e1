import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { namesNothing } from "@/app/_server/door/presence";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { loadHistory, loadHistorySource, loadSessionPage, undoChange } from "@/app/_server/session/load-history";
import { loadMoveForm, type MoveWish, saveMove } from "@/app/_server/session/move-desk";
import { readReadingsInForce } from "@/db/read/readings";
import { readCaptures, readSessions } from "@/db/read/sessions";
import { readMergedInto, readStudents } from "@/db/read/students";
import { buildHistoryCsv } from "@/lib/report/build-history";
import type { FormModel } from "@/lib/report/form-model";
import { admitFilmed, admitNew, formOf, sent } from "./corrected-season";
import { startAcademy } from "./own-academy-data";
import { filmDays } from "./reread-season";

let viewer: Viewer;
let mine: StudentViewer;
let lefty: StudentViewer;
let twin: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  mine = await admitFilmed(viewer, "Zephyrine");
  lefty = await admitNew(viewer, "Lark", "left");
  twin = await admitNew(viewer, "Zephi", "right");
});
afterAll(() => remove());

function form(who: StudentViewer, wish: MoveWish, draftId: string = randomUUID()): FormModel {
  const model = loadMoveForm(who, wish, draftId);
  if (!model) throw new Error("no form");
  return model;
}
const sessionsOf = (who: StudentViewer) => readSessions(who.db, who.student).map((session) => session.id);
const valuesOf = (who: StudentViewer, id: string) =>
  readReadingsInForce(who.db, who.student)
    .filter((reading) => reading.sessionId === id)
    .map((reading) => reading.value);
async function errorsOf(who: StudentViewer, wish: MoveWish, data: FormData): Promise<Record<string, string>> {
  const outcome = await saveMove(who, wish, data);
  if (outcome.kind !== "refused") throw new Error(outcome.kind);
  const fields = form(who, wish, outcome.draftId).parts.flatMap((part) => part.fields);
  return Object.fromEntries(fields.flatMap(({ name, error }) => (error === "" ? [] : [[name, error]])));
}
async function undoLatest(who: StudentViewer): Promise<string> {
  const press = loadHistory(who, undefined).parts[1]?.presses[0];
  return undoChange(who, formOf(Object.fromEntries(press?.hidden.map(({ name, value }) => [name, value]) ?? [])));
}

describe("moving a session", () => {
  const wish = { kind: "move", sessionId: "film2" } as const;

  it("asks to whom, why, and what the signs mean where the hands differ; somebody without consent can't take it", async () => {
    expect(Object.keys(await errorsOf(mine, wish, sent(form(mine, wish), {})))).toEqual(["to", "why"]);
    const over = sent(form(mine, wish), { to: lefty.student.studentId, why: "wrong one" });
    over.delete("signs");
    expect((await errorsOf(mine, wish, over)).signs).toMatch(/filmed left-handed, the other right-handed/);
    viewer.db.sqlite
      .prepare("UPDATE consent SET withdrawn_on = '2001-01-01' WHERE student_id = ?")
      .run(twin.student.studentId);
    const barred = sent(form(mine, wish), { to: twin.student.studentId, why: "wrong one" });
    expect((await errorsOf(mine, wish, barred)).to).toMatch(/No consent/);
    viewer.db.sqlite.prepare("UPDATE consent SET withdrawn_on = NULL").run();
    for (const to of ["nobody", mine.student.studentId, "' OR 1=1"])
      expect((await errorsOf(mine, wish, sent(form(mine, wish), { to, why: "x" }))).to).toMatch(/Choose one/);
    expect(sessionsOf(lefty)).toEqual([]);
  });

  it("goes whole, its signs turned or not as was said, is told in both histories, and comes back by undoing", async () => {
    const before = valuesOf(mine, "film2");
    viewer.db.sqlite.exec("UPDATE capture SET pointing_stick_lean = 3 WHERE session_id = 'film2'");
    for (const [signs, sign] of [
      ["keep", 1],
      ["turn", -1],
    ] as const) {
      const to = lefty.student.studentId;
      const outcome = await saveMove(mine, wish, sent(form(mine, wish), { to, why: "wrong student", signs }));
      expect(outcome).toEqual({ kind: "saved", studentId: to, sessionId: "film2" });
      expect(sessionsOf(mine)).not.toContain("film2");
      expect(sessionsOf(lefty)).toEqual(["film2"]);
      // A hinge is the same in a mirrored picture; what a stick shows isn't.
      expect(valuesOf(lefty, "film2")).toEqual(before);
      expect(readCaptures(viewer.db, lefty.student)[0]?.seen.pointingStickLean).toBe(3 * sign);
      expect(loadHistorySource(mine).entries[0]).toMatchObject({ kind: "record", why: "wrong student" });
      expect(loadSessionPage(lefty, "film2", undefined)?.title).toMatch(/^Lark/);
      expect(loadSessionPage(mine, "film2", undefined)).toBeNull();
      expect(await undoLatest(lefty)).toBe("undo-undone");
      expect([sessionsOf(lefty), valuesOf(mine, "film2")]).toEqual([[], before]);
      expect(
        readCaptures(viewer.db, mine.student).find((film) => film.sessionId === "film2")?.seen.pointingStickLean,
      ).toBe(3);
    }
  });
});

describe("splitting a session", () => {
  const wish = { kind: "split", sessionId: "film4" } as const;

  it("needs a swing that goes and one that stays", async () => {
    expect((await errorsOf(mine, wish, sent(form(mine, wish), { why: "two clubs" }))).swings).toMatch(/at least one/);
    const all = sent(form(mine, wish), { why: "two clubs" });
    for (const number of ["1", "2", "3"]) all.append("swings", number);
    expect((await errorsOf(mine, wish, all)).swings).toMatch(/has to stay/);
    expect((await errorsOf(mine, wish, sent(form(mine, wish), { why: "x", swings: "9" }))).swings).toBeTruthy();
  });

  it("makes a session of the swings that go, of that day and group; undone, all is as before", async () => {
    const before = [sessionsOf(mine), valuesOf(mine, "film4")];
    const outcome = await saveMove(
      mine,
      wish,
      sent(form(mine, wish), { why: "driver after all", swings: "2", clubGroup: "driver" }),
    );
    if (outcome.kind !== "saved") throw new Error(outcome.kind);
    const made = readSessions(viewer.db, mine.student).find((session) => session.id === outcome.sessionId);
    expect(made).toMatchObject({ day: filmDays(mine)[4], clubGroup: "driver", sequence: 1 });
    expect([valuesOf(mine, outcome.sessionId ?? ""), valuesOf(mine, "film4")]).toEqual([
      [before[1]?.[1]],
      [before[1]?.[0], before[1]?.[2]],
    ]);
    expect(await undoLatest(mine)).toBe("undo-undone");
    expect([sessionsOf(mine), valuesOf(mine, "film4")]).toEqual(before);
  });
});

describe("merging two students", () => {
  const wish = { kind: "merge", sessionId: null } as const;

  it("takes everything to the other, who alone is listed; the old address leads there; undone, both stand again", async () => {
    const before = sessionsOf(mine);
    const to = twin.student.studentId;
    const outcome = await saveMove(mine, wish, sent(form(mine, wish), { to, why: "entered twice" }));
    expect(outcome).toEqual({ kind: "saved", studentId: to, sessionId: null });
    expect(sessionsOf(twin)).toEqual(before);
    expect(readStudents(viewer.db, viewer.scope).map((student) => student.alias)).toEqual(["Lark", "Zephi"]);
    expect(readMergedInto(viewer.db, mine.student)).toBe(to);
    expect(JSON.stringify(await loadRoster(viewer, { sort: undefined, page: undefined }))).not.toContain("Zephyrine");
    expect(namesNothing(`/students/${mine.student.studentId}/hinge`, viewer)).toBe(false);
    const csv = buildHistoryCsv(viewer.words, loadHistorySource(twin));
    expect(csv).toMatch(/merge-students,.*Zephyrine,Zephi,Coach Lark,entered twice/);
    expect(await undoLatest(twin)).toBe("undo-undone");
    expect([sessionsOf(mine), sessionsOf(twin)]).toEqual([before, []]);
    expect(admitToStudent(viewer, mine.student.studentId)).not.toBeNull();
    expect(readStudents(viewer.db, viewer.scope)).toHaveLength(3);
  });
});
