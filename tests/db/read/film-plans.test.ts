import { expect, test } from "vitest";
import type { Database } from "@/db/client";
import { readFilmPlans, readPromisedFilms } from "@/db/read/film-plans";
import { filmPlan } from "@/db/schema-plans";
import { insertRegrouping } from "@/db/write/club-groups";
import { insertSession } from "@/db/write/sessions";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import { mergeGroups, type Regrouping, splitGroup } from "@/lib/domain/regroup-clubs";
import { academyScope, countingStamp, openAcademy, sessionOn, studentScope } from "../academy-fixture";

const AT = "2031-02-01T10:00:00.000Z";

function tell(db: Database, id: string, change: object = {}): void {
  const row = { id, studentId: "s1", clubGroup: "iron", madeOn: "2031-02-01", dueOn: "2031-02-08", body: "{}" };
  db.orm
    .insert(filmPlan)
    .values({ ...row, who: "Owner", recordedAt: AT, ...change })
    .run();
}
const due = (db: Database, day = "2031-02-09", scope = academyScope()) =>
  readPromisedFilms(db, scope, day).map(({ planId }) => planId);
const film = (db: Database, day: string, enteredAt: string, studentId = "s1") =>
  insertSession(db, studentScope(studentId), sessionOn(day), {
    ...countingStamp(`${studentId}${day}`, enteredAt),
    batchId: null,
  });

test("a promise is due the day after its day, not on it, and only while no film came after it was made", async () => {
  const db = await openAcademy();
  tell(db, "p1");
  expect([due(db, "2031-02-08"), due(db)]).toEqual([[], ["p1"]]);
  film(db, "2031-01-31", "2031-02-05T10:00:00.000Z");
  film(db, "2031-02-01", "2031-02-01T09:00:00.000Z");
  expect(due(db)).toEqual(["p1"]);
  film(db, "2031-02-03", "2031-02-20T10:00:00.000Z", "s2");
  expect(due(db)).toEqual(["p1"]);
  film(db, "2031-02-03", "2031-02-20T10:00:00.000Z");
  expect(due(db)).toEqual([]);
});

test("a film of the very day counts where it was entered after the plan", async () => {
  const db = await openAcademy();
  tell(db, "p1");
  film(db, "2031-02-01", "2031-02-01T10:00:01.000Z");
  expect(due(db)).toEqual([]);
});

test("the latest standing promise of each student, longest awaited first; none of whoever has left or isn't the viewer's", async () => {
  const db = await openAcademy();
  tell(db, "p1");
  tell(db, "p2", { recordedAt: "2031-02-01T11:00:00.000Z", dueOn: "2031-02-07" });
  tell(db, "p3", { madeOn: "2031-02-02", voidedAt: AT });
  tell(db, "p4", { studentId: "s2", dueOn: "2031-02-04" });
  tell(db, "p5", { studentId: "t1" });
  expect(due(db)).toEqual(["p4", "p2"]);
  const only = { ...academyScope(), students: ["s1"] } as unknown as ReturnType<typeof academyScope>;
  expect(due(db, "2031-02-09", only)).toEqual(["p2"]);
  expect(due(db, "2031-02-09", academyScope("a2"))).toEqual(["p5"]);
  db.sqlite.exec("UPDATE student SET departed_on = '2031-02-05' WHERE id = 's2'");
  expect(due(db)).toEqual(["p2"]);
});

test("a film with other clubs keeps no promise, and a promise with other clubs replaces none", async () => {
  const db = await openAcademy();
  tell(db, "p1");
  tell(db, "p2", { clubGroup: "wood", madeOn: "2031-02-02" });
  expect(due(db)).toEqual(["p1", "p2"]);
  film(db, "2031-02-03", "2031-02-03T10:00:00.000Z");
  expect(due(db)).toEqual(["p2"]);
});

function regroup(db: Database, number: number, change: Regrouping): readonly string[] {
  if (change.kind !== "ok") throw new Error(JSON.stringify(change.issues));
  const by = { day: "2031-02-01", who: "Owner", why: "as we play" };
  const made = insertRegrouping(db, academyScope(), { kind: "split", change, ...by }, countingStamp(`g${number}`));
  if (made.kind !== "recorded") throw new Error(made.kind);
  return change.to;
}

test("a promise that was told before its clubs were split or merged is kept by a film with what they became", async () => {
  for (const club of ["7-iron", "4-iron"]) {
    const db = await openAcademy();
    tell(db, "p1");
    const asked = { firstName: "Middle irons", secondName: "Long irons", secondClubs: ["4i"] as const };
    const [middle, long] = regroup(db, 1, splitGroup(SHORT_LIST, { group: "iron", ...asked, rest: "first" }));
    expect(readFilmPlans(db, studentScope())[0]).toMatchObject({ clubGroup: middle, answeredWith: [middle, long] });
    expect(readPromisedFilms(db, academyScope(), "2031-02-09")).toMatchObject([{ planId: "p1", clubGroup: middle }]);
    const entered = { ...sessionOn("2031-02-03"), club };
    insertSession(db, studentScope(), entered, { ...countingStamp("film", "2031-02-03T10:00:00.000Z"), batchId: null });
    expect(due(db)).toEqual([]);
  }
  const db = await openAcademy();
  tell(db, "p1", { clubGroup: "hybrid" });
  tell(db, "p2", { clubGroup: "wood", madeOn: "2031-02-02" });
  expect(due(db)).toEqual(["p1", "p2"]);
  const asked = { first: "hybrid", second: "wood", name: "Long game", goalsOf: "second" } as const;
  const [merged] = regroup(db, 1, mergeGroups(SHORT_LIST, asked));
  // The later one stands in for the earlier: they are of the same clubs now.
  expect(readPromisedFilms(db, academyScope(), "2031-02-09")).toMatchObject([{ planId: "p2", clubGroup: merged }]);
});

test("a body that can't be read is none, and the promise counts all the same", async () => {
  const db = await openAcademy();
  tell(db, "p1");
  expect(readFilmPlans(db, studentScope())[0]?.body).toBeNull();
  expect(readPromisedFilms(db, academyScope(), "2031-03-01")[0]).toMatchObject({ studentId: "s1", body: null });
});
