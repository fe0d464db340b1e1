import { mkdirSync, readdirSync } from "node:fs";
import path from "node:path";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { closeDatabases, findAcademyDatabase } from "@/app/_server/database";
import { diskFailureOf } from "@/app/_server/door/disk-failure";
import { findHeld, refuseForDisk } from "@/app/_server/draft/held-forms";
import { clearTraces, hasTraces } from "@/app/_server/erase/clear-traces";
import { eraseWhenMeant, loadErased } from "@/app/_server/erase/erase-desk";
import { eraseGroup } from "@/app/_server/erase/erase-group";
import { addToErasedList, erasedDigest, erasedListOf } from "@/app/_server/erase/erased-list";
import { loadErase } from "@/app/_server/erase/load-erase";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { announce } from "@/app/_server/keeping/announce";
import { loadKeeping } from "@/app/_server/keeping/load-keeping";
import { loadRules } from "@/app/_server/roster/load-verdicts";
import { addStudent } from "@/app/_server/season/student-desk";
import { addSession } from "@/app/_server/session/session-desk";
import { People } from "@/app/_ui/people/people";
import { digestTables } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { readErasedGroup } from "@/db/read/erased-group";
import { readErasures } from "@/db/read/erasures";
import { readStudents } from "@/db/read/students";
import { updateDeparted } from "@/db/write/students";
import { formOf, sessionFields } from "../../trust/own-academy";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";

/** Under which the gate for writing is shared. */
const GATE = Symbol.for("proofband.write-gate");

let academy: PeopleAcademy;

beforeEach(async () => {
  academy = await startPeopleAcademy();
  await academy.add({ userId: "lark", name: "Lark", roles: ["coach"] });
  await academy.add({ userId: "olive", name: "Olive", roles: ["owner"] });
  for (const alias of ["Ari", "Bo"])
    addStudent(
      academy.viewer("lark"),
      formOf({ alias, hand: "right", zone: "UTC", consentGivenBy: "Parent", consentOnPaper: "yes" }),
    );
  await addSession(studentOf(academy.viewer("lark"), "Ari"), formOf(sessionFields("2026-09-01")));
});
afterEach(() => academy.remove());

const ada = (): Viewer => academy.viewer(academy.ownerId);

function studentOf(viewer: Viewer, alias: string): StudentViewer {
  const found = readStudents(viewer.db, viewer.scope).find((each) => each.alias === alias);
  const student = found ? admitToStudent(viewer, found.id) : null;
  if (!student) throw new Error(`${alias} isn't seen`);
  return { ...viewer, student };
}

describe("the page that erases", () => {
  it("tells what would go and writes nothing; a coach is told who erases", async () => {
    const before = await digestTables(academy.db);
    const page = loadErase(studentOf(ada(), "Ari"), {});
    const said = JSON.stringify(page);
    expect(said).toContain("Erase for good");
    expect(page.parts[0]?.table?.rows.map(({ cells }) => cells)).toContainEqual(["Readings", "4"]);
    const coachs = JSON.stringify(loadErase(studentOf(academy.viewer("lark"), "Ari"), {}));
    expect(coachs).not.toContain("Erase for good");
    expect(coachs).toContain("A director erases records: Ada");
    expect(await digestTables(academy.db)).toEqual(before);
  });

  it.each([
    ["the name is another's", { reason: "asked", alias: "Bo" }, "alias"],
    ["the name is empty", { reason: "asked", alias: "" }, "alias"],
    ["no reason is said", { alias: "Ari" }, "reason"],
    ["a reason that only the clock may say", { reason: "idle", alias: "Ari" }, "reason"],
  ])("erases nothing where %s", async (_name, fields, why) => {
    const before = await digestTables(academy.db);
    expect(await eraseWhenMeant(studentOf(ada(), "Ari"), formOf(fields as Record<string, string>))).toEqual({
      kind: "refused",
      why,
    });
    expect(await digestTables(academy.db)).toEqual(before);
  });

  it("erases when it is meant, keeps a count, and says words for the family that name nobody", async () => {
    const outcome = await eraseWhenMeant(studentOf(ada(), "Ari"), formOf({ reason: "asked", alias: " Ari " }));
    expect(outcome).toMatchObject({ kind: "erased", traces: "cleared" });
    expect(readStudents(academy.db, ada().scope).map(({ alias }) => alias)).toEqual(["Bo"]);
    expect(readErasures(academy.db, ada().scope)).toMatchObject([
      { who: "Ada", reason: "asked", sessions: 1, readings: 4 },
    ]);
    const of = outcome.kind === "erased" ? outcome.erasureId : "";
    const said = JSON.stringify(loadErased(ada(), { of }));
    expect(said).toContain("1 session and 4 readings");
    // No day is promised that nothing keeps: copies go with the next copy.
    expect(said).not.toContain("at the latest");
    expect(said).toContain("as long as copies go on being made; a copy that somebody keeps elsewhere");
    expect(said).not.toContain("Ari");
    expect(loadErased(ada(), { of: "another" }).title).toBe("No record was erased here");
    expect(readdirSync(path.dirname(academy.db.file)).filter((name) => name.endsWith(".erased"))).toHaveLength(1);
  });

  it("of a form about several students that waits in memory only the erased one's fields go", async () => {
    const [ari, bo] = [studentOf(ada(), "Ari"), studentOf(ada(), "Bo")];
    const form = formOf({
      [`r.1.${ari.student.studentId}.hinge`]: "90",
      [`r.1.${bo.student.studentId}.hinge`]: "91",
      note: "Ari was late",
    });
    const { draftId } = refuseForDisk(ada(), "group-form", form, { code: "SQLITE_FULL" });
    await eraseWhenMeant(ari, formOf({ reason: "asked", alias: "Ari" }));
    const held = findHeld(ada(), "group-form", draftId);
    expect(held?.entries).toEqual([[`r.1.${bo.student.studentId}.hinge`, "91"]]);
  });

  it("where the list can't be written nothing is erased, and the page of a full disk says so", async () => {
    const before = await digestTables(academy.db);
    const full = Object.assign(new Error("no space left"), { code: "ENOSPC" });
    expect(diskFailureOf(full)).toBe("full");
    mkdirSync(erasedListOf(academy.db.file));
    await expect(eraseWhenMeant(studentOf(ada(), "Ari"), formOf({ reason: "asked", alias: "Ari" }))).rejects.toThrow();
    expect(await digestTables(academy.db)).toEqual(before);
  });

  it("an id in the list whose rows are there, as a process killed before the commit leaves it, is erased at the next start", async () => {
    const { academyId, studentId } = studentOf(ada(), "Ari").student;
    const line = { student: erasedDigest({ academyId, studentId }), day: "2026-11-26", reason: "asked" } as const;
    addToErasedList(erasedListOf(academy.db.file), [line]);
    closeDatabases();
    const found = await findAcademyDatabase("own");
    expect(found?.db.sqlite.prepare("SELECT alias FROM student").pluck().all()).toEqual(["Bo"]);
    expect(found?.db.sqlite.prepare("SELECT who, reason, readings FROM erasure").all()).toEqual([
      { who: "Proofband", reason: "asked", readings: 4 },
    ]);
    expect(found && hasTraces(found.db)).toBe("no");
  });

  it("traces that a reader keeps are cleared when it is gone, and are noted until then", async () => {
    const reader = openDatabase(academy.db.file, "read");
    reader.sqlite.exec("BEGIN");
    reader.sqlite.prepare("SELECT count(*) FROM student").get();
    const outcome = await eraseWhenMeant(studentOf(ada(), "Ari"), formOf({ reason: "mistake", alias: "Ari" }));
    expect(outcome).toMatchObject({ kind: "erased", traces: "left" });
    expect(hasTraces(academy.db)).toBe("yes");
    reader.sqlite.exec("COMMIT");
    reader.close();
    expect(clearTraces(academy.db)).toBe("cleared");
    expect(hasTraces(academy.db)).toBe("no");
  });

  it("who is erased while the academy is judged is judged no more, and nobody else's page fails", async () => {
    academy.db.sqlite.exec("UPDATE student SET revision = revision + 1");
    const judging = loadRules(ada());
    await new Promise((resolve) => setImmediate(resolve));
    await eraseWhenMeant(studentOf(ada(), "Ari"), formOf({ reason: "asked", alias: "Ari" }));
    await judging;
    await loadRules(ada());
    expect(academy.db.sqlite.prepare("SELECT count(*) FROM analysis").pluck().get()).toBe(0);
  });

  it.each([1, 2, 3, 4])("nor who is erased at wait %i for the disk", async (wait) => {
    const ari = studentOf(ada(), "Ari");
    academy.db.sqlite.exec("DELETE FROM look_noise; UPDATE student SET revision = revision + 1");
    let waits = 0;
    const shared = globalThis as { [GATE]?: unknown };
    const gate = shared[GATE];
    shared[GATE] = {
      get closed() {
        waits += 1;
        if (waits === wait)
          eraseGroup(academy.db, readErasedGroup(academy.db, ari.student), {
            ...{ who: "Ada", reason: "asked", words: ari.words },
          });
        return null;
      },
    };
    try {
      await loadRules(ada());
      expect(waits).toBeGreaterThanOrEqual(wait);
    } finally {
      shared[GATE] = gate;
    }
    for (const table of ["analysis", "look_noise", "session"])
      expect([table, academy.db.sqlite.prepare(`SELECT count(*) FROM ${table}`).pluck().get()]).toEqual([table, 0]);
  });

  it("says when the record of a student who has left would go, and where leaving is noted", () => {
    const ari = studentOf(ada(), "Ari");
    updateDeparted(academy.db, ari.student, "2026-10-01");
    const said = JSON.stringify(loadErase(ari, {}));
    expect(said).toContain("Left on 1 Oct 2026");
    expect(said).toContain("erased on or after 1 Oct 2028");
    expect(said).toContain(`/students/${ari.student.studentId}/consent`);
  });
});

describe("the page of what is kept", () => {
  it("a director sees whom and may keep them; whoever only runs the academy sees how many, and no name", () => {
    updateDeparted(academy.db, studentOf(ada(), "Ari").student, "2020-01-01");
    announce(ada());
    const directors = JSON.stringify(loadKeeping(ada(), {}));
    expect(directors).toContain("Keep Ari after all");
    expect(directors).toContain("/api/tables?of=keeping");
    const owners = JSON.stringify(loadKeeping(academy.viewer("olive"), {}));
    expect(owners).toContain("One record");
    expect(owners).not.toContain("Ari");
  });

  it("two announcements stand on one page with every field under a label and no id twice, and so does the page that erases", () => {
    for (const alias of ["Ari", "Bo"]) updateDeparted(academy.db, studentOf(ada(), alias).student, "2020-01-01");
    announce(ada());
    const send = async (): Promise<void> => {};
    const actions = { hold: send, release: send, settle: send, erase: send };
    for (const model of [loadKeeping(ada(), {}), loadErase(studentOf(ada(), "Ari"), { why: "alias" })]) {
      const markup = renderToStaticMarkup(createElement(People, { model, actions }));
      const ids = [...markup.matchAll(/ id="([^"]+)"/g)].map((found) => found[1]);
      expect(ids.length).toBeGreaterThan(1);
      expect(new Set(ids).size).toBe(ids.length);
      for (const [, id] of markup.matchAll(/<input(?![^>]*type="(?:hidden|radio)")[^>]* id="([^"]+)"/g))
        expect(markup).toContain(`for="${id}"`);
      expect(markup).not.toMatch(/undefined|NaN/);
    }
  });
});
