import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { lookAt, MANY_ROWS, noteLooks } from "@/app/_server/access/looks";
import { kindOf, MATRIX, type RowKey } from "@/app/_server/access/matrix";
import { admitToStudent, type Viewer } from "@/app/_server/gate";
import { insertCharge } from "@/db/write/people";
import { insertStudent } from "@/db/write/students";
import type { StudentScope } from "@/lib/domain/scope";
import { countingStamp, NOW } from "../../../db/academy-fixture";
import { startAcademy } from "../own-academy-data";
import { type PeopleAcademy, startPeopleAcademy } from "../people-academy";

let people: PeopleAcademy;
beforeAll(async () => {
  people = await startPeopleAcademy();
  const { db } = people;
  const { scope } = people.viewer(people.ownerId);
  const bird = { birthYear: null, hand: "right", zone: "UTC", clubs: "" } as const;
  for (const id of ["one", "two"])
    insertStudent(db, { ...scope, userId: null }, { id, alias: id, ...bird }, null, countingStamp(id));
  await people.add({ userId: "both", name: "Both", roles: ["coach", "director", "assistant"], assists: [] });
  await people.add({ userId: "coach", name: "Coach", roles: ["coach"] });
  await people.add({ userId: "help", name: "Help", roles: ["assistant"], assists: ["coach"] });
  const from = { fromDay: "2020-01-01", untilDay: null, who: "Ada", recordedAt: NOW, kind: "own" } as const;
  insertCharge(db, { id: "c1", studentId: "one", coachId: "both", ...from });
  insertCharge(db, { id: "c2", studentId: "two", coachId: "coach", ...from });
});
afterAll(() => people.remove());

function looked(viewer: Viewer, studentId: string, place: RowKey): unknown {
  const scope = admitToStudent(viewer, studentId);
  people.db.sqlite.exec("DELETE FROM record_view");
  noteLooks(viewer, scope ? [scope] : [], place);
  return people.db.sqlite.prepare("SELECT student_id AS of, who, role, what, place FROM record_view").all()[0];
}

describe("an entry of who looked", () => {
  it("names the role by which the student was reached: in charge comes before directing, that before helping", () => {
    const page = { what: "page", place: "/students/[studentId]/sessions/new" } as const;
    const at = page.place;
    expect(looked(people.viewer("both"), "one", at)).toEqual({ of: "one", who: "Both", role: "coach", ...page });
    expect(looked(people.viewer("both"), "two", at)).toEqual({ of: "two", who: "Both", role: "director", ...page });
    expect(looked(people.viewer("coach"), "two", at)).toEqual({ of: "two", who: "Coach", role: "coach", ...page });
    expect(looked(people.viewer("help"), "two", at)).toEqual({ of: "two", who: "Help", role: "assistant", ...page });
    expect(looked(people.viewer("help"), "one", at)).toBeUndefined();
  });

  it("a page is a page, one that is made for paper a print, whatever is fetched a file, and a press nothing", () => {
    const rows = (Object.keys(MATRIX) as RowKey[]).filter((row) => kindOf(row) === "student");
    const of = (what: ReturnType<typeof lookAt>) => rows.filter((row) => lookAt(row) === what);
    expect(of("print")).toEqual(["/students/[studentId]/report", "/students/[studentId]/sessions/sheet"]);
    expect(of("file").every((row) => row.startsWith("GET /api/"))).toBe(true);
    expect(of(null).every((row) => /^\/\S+ \w+$/.test(row))).toBe(true);
    expect(of("page").every((row) => /^\/\S+$/.test(row))).toBe(true);
    expect(of("page").length + of("file").length).toBeGreaterThan(35);
    expect(MANY_ROWS.map((row) => lookAt(row))).toEqual(["file", "file", "file"]);
  });

  it("a program on this machine is none of the academy's people", async () => {
    const { viewer, remove } = await startAcademy();
    insertStudent(
      viewer.db,
      viewer.scope,
      { id: "s", alias: "s", birthYear: null, hand: "right", zone: "UTC", clubs: "" },
      null,
      countingStamp(),
    );
    noteLooks(viewer, [admitToStudent(viewer, "s") as StudentScope], "npm run export");
    expect(viewer.db.sqlite.prepare("SELECT who, role, what, place FROM record_view").all()).toEqual([
      { who: "npm run export", role: "program", what: "file", place: "npm run export" },
    ]);
    remove();
  });
});
