import { randomUUID } from "node:crypto";
import { describe, expect, it } from "vitest";
import { closeDatabases } from "@/app/_server/database";
import type { StudentViewer } from "@/app/_server/gate";
import { look } from "@/app/_server/keeping/keeper";
import { holdNotice, whyOf } from "@/app/_server/keeping/keeping-desk";
import { loadKeeping } from "@/app/_server/keeping/load-keeping";
import { addSession } from "@/app/_server/session/session-desk";
import { readErasures } from "@/db/read/erasures";
import {
  aliases,
  clockedAcademy,
  depart,
  lookAt,
  notices,
  runDays,
  student,
  viewer,
  withClockedAcademy,
} from "./clocked-academy";
import { countCases } from "./count-cases";
import { formOf, sessionFields } from "./own-academy";

// P4: the retention clock, injected.

const kept = countCases("P4 retention clock", 9);

withClockedAcademy();

function linkOf(to: StudentViewer, expiresAt: string): string {
  const id = randomUUID();
  to.db.sqlite
    .prepare(
      `INSERT INTO family_link (id, student_id, token_hash, label, who, made_at, expires_at)
       VALUES (?, ?, ?, 'mother', 'Coach', '2031-01-10T12:00:00.000Z', ?)`,
    )
    .run(id, to.student.studentId, id, expiresAt);
  return id;
}

describe("P4: what nobody needs is announced, and then gone on the day", () => {
  it("a departed student: nothing for two years less 30 days, then announced, then gone on the day and not before", async () => {
    depart(await student("Ari"), "2031-01-10");
    await runDays("2031-01-11", "2031-01-12");
    // The machine is on each day; only the days that matter are looked at.
    const { db, scope } = await viewer();
    const on = (iso: string) => db.sqlite.prepare("UPDATE academy SET clock_seen_at = ?").run(iso);
    on("2032-12-09T04:00:00.000Z");
    await lookAt("2032-12-10T04:00:00.000Z");
    expect(await notices()).toEqual([]);
    kept.add();
    await lookAt("2032-12-11T04:00:00.000Z");
    const departed = (await notices()).filter(({ kind }) => kind === "departed");
    expect(departed).toMatchObject([{ dueDay: "2033-01-10", heldAt: null }]);
    kept.add();
    on("2033-01-08T05:00:00.000Z");
    await lookAt("2033-01-09T23:59:00.000Z");
    expect(await aliases()).toContain("Ari");
    kept.add();
    await lookAt("2033-01-10T02:59:00.000Z");
    expect(await aliases()).toContain("Ari");
    await lookAt("2033-01-10T03:00:00.000Z");
    expect(await aliases()).not.toContain("Ari");
    // Others, of whom nothing was entered for as long, may go on the same day.
    expect(readErasures(db, scope)).toContainEqual(expect.objectContaining({ reason: "departed", who: "Proofband" }));
    kept.add();
  });

  it("an idle record: announced two years after anything was entered, and a session takes the announcement back", async () => {
    const { db } = await viewer();
    await lookAt("2031-01-11T04:00:00.000Z");
    db.sqlite.prepare("UPDATE academy SET clock_seen_at = '2033-01-19T04:00:00.000Z'").run();
    await lookAt("2033-01-20T04:00:00.000Z");
    expect((await notices()).map(({ kind, dueDay }) => [kind, dueDay])).toEqual([
      ["idle", "2033-02-19"],
      ["idle", "2033-02-19"],
    ]);
    kept.add();
    await addSession(await student("Bo"), formOf(sessionFields("2033-01-20")));
    await runDays("2033-01-21", "2033-02-19");
    expect(await aliases()).toEqual(["Bo"]);
    kept.add();
  });

  it("kept after all, with a reason: it stays past its day; released, it is announced anew with all its days", async () => {
    depart(await student("Ari"), "2028-01-10");
    await lookAt("2031-01-11T04:00:00.000Z");
    const [notice] = await notices();
    expect(notice).toMatchObject({ kind: "departed", dueDay: "2031-02-10" });
    const director = clockedAcademy().viewer(clockedAcademy().ownerId);
    const why = whyOf(notice?.id ?? "");
    const press = { noticeId: notice?.id ?? "", studentId: notice?.studentId ?? "" };
    expect(holdNotice(director, formOf({ ...press, [why]: " " }), "hold")).toBe("why");
    expect(holdNotice(director, formOf({ ...press, [why]: "comes back in spring" }), "hold")).toBe("held");
    await runDays("2031-01-12", "2031-02-12");
    expect(await aliases()).toContain("Ari");
    // Only what is kept can be let go of, and only as the announcement of its own student.
    const bo = { ...press, studentId: (await student("Bo")).student.studentId };
    expect(holdNotice(director, formOf(bo), "release")).toBe("gone");
    expect(await notices()).toMatchObject([{ id: press.noticeId, why: "comes back in spring" }]);
    expect(holdNotice(director, formOf(press), "release")).toBe("released");
    expect(holdNotice(director, formOf(press), "release")).toBe("gone");
    await runDays("2031-02-13", "2031-03-14");
    expect(await aliases()).toContain("Ari");
    await lookAt("2031-03-15T04:00:00.000Z");
    expect(await aliases()).not.toContain("Ari");
    kept.add();
  });

  it("a family's link that has ended is announced, and its row goes 30 days later; the record stays", async () => {
    const ari = await student("Ari");
    const [ended, open] = [linkOf(ari, "2031-01-11T00:00:00.000Z"), linkOf(ari, "2031-12-01T00:00:00.000Z")];
    await lookAt("2031-01-11T04:00:00.000Z");
    expect(await notices()).toMatchObject([{ kind: "link", linkId: ended, dueDay: "2031-02-10" }]);
    await runDays("2031-01-12", "2031-02-09");
    const links = () => ari.db.sqlite.prepare("SELECT id FROM family_link").pluck().all();
    expect(links()).toHaveLength(2);
    await lookAt("2031-02-10T04:00:00.000Z");
    expect(links()).toEqual([open]);
    expect(await aliases()).toContain("Ari");
    kept.add();
  });

  it("a record whose family waits for an answer stays past its day, and as long again as an announcement after it", async () => {
    const ari = await student("Ari");
    depart(ari, "2028-01-10");
    const { sqlite } = ari.db;
    sqlite
      .prepare("INSERT INTO family_request (id, student_id, kind, asked_at) VALUES ('r', ?, 'export', ?)")
      .run(ari.student.studentId, "2031-01-10T12:00:00.000Z");
    await runDays("2031-01-11", "2031-02-15");
    expect(await aliases()).toContain("Ari");
    expect(JSON.stringify(loadKeeping(await viewer(), {}))).toContain("isn’t erased by the clock before it has been");
    sqlite.prepare("UPDATE family_request SET settled_at = ?").run("2031-02-15T12:00:00.000Z");
    await runDays("2031-02-16", "2031-03-16");
    expect(await aliases()).toContain("Ari");
    await runDays("2031-03-17", "2031-03-17");
    expect(await aliases()).not.toContain("Ari");
    kept.add();
  });

  it("forms that nobody touched go after 90 days and not before; a day's work is done once, also over restarts", async () => {
    const { db, academy: here } = await viewer();
    db.sqlite
      .prepare("INSERT INTO draft (id, academy_id, kind, body, updated_at) VALUES ('d', ?, 'student-form', '{}', ?)")
      .run(here.id, "2031-01-10T12:00:00.000Z");
    const there = () => db.sqlite.prepare("SELECT count(*) FROM draft WHERE id = 'd'").pluck().get();
    await runDays("2031-01-11", "2031-04-10");
    expect(there()).toBe(1);
    await lookAt("2031-04-11T04:00:00.000Z");
    expect(there()).toBe(0);
    db.sqlite
      .prepare("INSERT INTO draft (id, academy_id, kind, body, updated_at) VALUES ('d', ?, 'student-form', '{}', '')")
      .run(here.id);
    closeDatabases();
    const again = await viewer();
    await look(again);
    expect(again.db.sqlite.prepare("SELECT count(*) FROM draft WHERE id = 'd'").pluck().get()).toBe(1);
    kept.add();
  });

  it("in the demo, whose day stands still, nothing runs out", async () => {
    depart(await student("Ari"), "2020-01-10");
    const { db } = await viewer();
    db.sqlite.prepare("UPDATE academy SET fixed_today = '2031-01-10'").run();
    await runDays("2031-01-11", "2031-03-20");
    expect(await notices()).toEqual([]);
    expect(await aliases()).toEqual(["Ari", "Bo"]);
    kept.add();
  });
});
