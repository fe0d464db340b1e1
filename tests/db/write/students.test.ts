import { describe, expect, test } from "vitest";
import { readAcademy, readAcademyIds } from "@/db/read/academies";
import {
  readAcademyConsents,
  readConsents,
  readHeights,
  readStudent,
  readStudentAcademy,
  readStudents,
} from "@/db/read/students";
import { insertConsent, insertHeight, insertStudent, updateConsentWithdrawn } from "@/db/write/students";
import { academyScope, countingStamp, countRows, NOW, openAcademy, revisionOf, studentScope } from "../academy-fixture";

const share = {
  kind: "share",
  givenBy: "Father",
  giverIs: "guardian",
  from: "2031-02-01",
  until: "2031-12-31",
  withdrawnOn: null,
} as const;

describe("students", () => {
  test("are listed by alias, those of one academy only", async () => {
    const db = await openAcademy();
    expect(readAcademyIds(db)).toEqual(["a1", "a2"]);
    expect(readAcademy(db, academyScope()).name).toBe("Academy a1");
    expect(readStudents(db, academyScope()).map((student) => student.alias)).toEqual(["Ferdi", "Ulla"]);
    expect(readStudents(db, academyScope("a2")).map((student) => student.id)).toEqual(["t1"]);
    expect(readStudent(db, studentScope())).toEqual({
      id: "s1",
      alias: "Ulla",
      birthYear: 2016,
      hand: "left",
      zone: "Europe/Vienna",
      clubs: "7 iron",
      language: "en",
      revision: 0,
      createdAt: NOW,
      departedOn: null,
    });
    expect([readStudentAcademy(db, "t1"), readStudentAcademy(db, "nobody")]).toEqual(["a2", undefined]);
  });

  test("who aren't there, or of another academy, are a mistake to ask for", async () => {
    const db = await openAcademy();
    expect(() => readStudent(db, studentScope("nobody"))).toThrow("no such student: nobody");
    expect(() => readStudent(db, studentScope("t1", "a1"))).toThrow("no such student: t1");
    expect(() => readAcademy(db, academyScope("a3"))).toThrow("no such academy: a3");
  });

  test("of an alias that the academy has are refused, with no consent left behind", async () => {
    const db = await openAcademy();
    const student = { id: "s3", alias: "Ulla", birthYear: null, hand: "right", zone: "UTC", clubs: "" } as const;
    const consents = countRows(db, "consent");
    expect(insertStudent(db, academyScope(), student, share, countingStamp())).toEqual({
      kind: "alias-taken",
      studentId: "s1",
    });
    expect([countRows(db, "student"), countRows(db, "consent")]).toEqual([3, consents]);
  });

  test("come with their consent or not at all", async () => {
    const db = await openAcademy();
    const student = { id: "s3", alias: "Kim", birthYear: null, hand: "right", zone: "UTC", clubs: "" } as const;
    const used = { now: NOW, newId: () => "consent1" };
    expect(() => insertStudent(db, academyScope(), student, share, used)).toThrow(/UNIQUE/);
    expect(readStudentAcademy(db, "s3")).toBeUndefined();
  });
});

describe("consents and heights", () => {
  test("are kept beside the earlier ones; a withdrawal keeps its first day", async () => {
    const db = await openAcademy();
    const consentId = insertConsent(db, studentScope(), share, countingStamp("c"));
    expect(revisionOf(db)).toBe(1);
    const withdraw = (withdrawnOn: string, scope = studentScope()) =>
      updateConsentWithdrawn(db, scope, { consentId, withdrawnOn }).kind;
    expect(withdraw("2031-04-01", studentScope("s2"))).toBe("unchanged");
    expect(withdraw("2031-04-01")).toBe("updated");
    expect(withdraw("2031-05-01")).toBe("unchanged");
    expect(revisionOf(db)).toBe(2);
    const kept = readConsents(db, studentScope()).map((one) => [one.kind, one.until, one.withdrawnOn]);
    expect(kept).toEqual([
      ["measure", null, null],
      ["share", "2031-12-31", "2031-04-01"],
    ]);
    expect(readAcademyConsents(db, academyScope()).map((one) => one.studentId)).toEqual(["s1", "s1", "s2"]);
    expect(readAcademyConsents(db, academyScope("a2"))).toEqual([]);
  });

  test("a height given again for a day takes the place of the first", async () => {
    const db = await openAcademy();
    insertHeight(db, studentScope(), { day: "2031-03-01", cm: 152 });
    insertHeight(db, studentScope(), { day: "2031-01-01", cm: 150.5 });
    insertHeight(db, studentScope(), { day: "2031-03-01", cm: 153 });
    expect(readHeights(db, studentScope())).toEqual([
      { day: "2031-01-01", cm: 150.5 },
      { day: "2031-03-01", cm: 153 },
    ]);
    expect([revisionOf(db), readHeights(db, studentScope("s2")).length]).toEqual([3, 0]);
  });
});
