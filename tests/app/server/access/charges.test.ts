import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadArchive } from "@/app/_server/archive/load-archive";
import { admitAs, admitPerson, admitToStudent, type Viewer } from "@/app/_server/gate";
import { insertGoalBand } from "@/db/write/goal-bands";
import { insertAccount, insertCharge, insertPerson, updateChargeEnded } from "@/db/write/people";
import { insertStudent } from "@/db/write/students";
import type { Role } from "@/lib/domain/person";
import { countingStamp, NOW } from "../../../db/academy-fixture";
import { startAcademy } from "../own-academy-data";

const STUDENTS = ["own", "covered", "covered-before", "covered-later", "ended", "foreign"];
const BIRD = { birthYear: null, hand: "right", zone: "UTC", clubs: "" } as const;

let academy: Awaited<ReturnType<typeof startAcademy>>;

function dayFrom(days: number): string {
  return new Date(Date.parse(`${academy.viewer.today}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

function add(userId: string, roles: readonly Role[], assists: readonly string[] = []): void {
  const { db, academy: here } = academy.viewer;
  insertAccount(db, {
    userId,
    name: userId,
    email: `${userId}@x.example`,
    passwordHash: "salt:hash",
    now: new Date(NOW),
  });
  insertPerson(db, { userId, academyId: here.id, roles, assists, addedAt: NOW, addedBy: "Coach Lark" });
}

function give(
  studentId: string,
  coachId: string,
  kind: "own" | "cover",
  fromDay: string,
  untilDay: string | null,
): void {
  const who = { who: "Coach Lark", recordedAt: NOW };
  insertCharge(academy.viewer.db, {
    id: `${coachId}-${studentId}`,
    studentId,
    coachId,
    kind,
    fromDay,
    untilDay,
    ...who,
  });
}

function seenBy(userId: string): Viewer["scope"]["students"] {
  const { db, academy: here } = academy.viewer;
  const viewer = admitPerson({ db, academyId: here.id, choice: "own" }, userId, { choice: "own", locale: null });
  if (!viewer) throw new Error(`${userId} is nobody here`);
  return viewer.scope.students;
}

beforeAll(async () => {
  academy = await startAcademy();
  const { db, scope } = academy.viewer;
  const stamp = countingStamp();
  for (const id of STUDENTS) insertStudent(db, scope, { id, alias: id, ...BIRD }, null, stamp);
  add("coach", ["coach"]);
  add("other", ["coach"]);
  add("help", ["assistant"], ["coach"]);
  add("helpless", ["assistant"]);
  add("director", ["director"]);
  add("owner", ["owner"]);
  add("nothing", []);
  add("gone", ["coach", "director"]);
  give("own", "coach", "own", dayFrom(-30), null);
  give("covered", "coach", "cover", dayFrom(0), dayFrom(0));
  give("covered-before", "coach", "cover", dayFrom(-9), dayFrom(-1));
  give("covered-later", "coach", "cover", dayFrom(1), dayFrom(9));
  give("ended", "coach", "own", dayFrom(-30), null);
  give("foreign", "other", "own", dayFrom(-30), null);
  give("own", "gone", "own", dayFrom(-30), null);
  db.sqlite.prepare("UPDATE person SET ended_at = ?, ended_by = 'x' WHERE user_id = 'gone'").run(NOW);
});

afterAll(() => academy.remove());

describe("who sees which students", () => {
  it("a coach: own ones and those covered on the day, from the first day to the last", () => {
    const ended = { endedAt: NOW, endedBy: "Coach Lark" };
    expect(updateChargeEnded(academy.viewer.db, "coach-ended", ended)).toBe("ended");
    expect(updateChargeEnded(academy.viewer.db, "coach-ended", { ...ended, endedBy: "later" })).toBe("unchanged");
    expect(seenBy("coach")).toEqual(["covered", "own"]);
    expect(seenBy("other")).toEqual(["foreign"]);
  });

  it("an assistant: those of the coaches they help, and none without one", () => {
    expect(seenBy("help")).toEqual(["covered", "own"]);
    expect(seenBy("helpless")).toEqual([]);
  });

  it("a director: all; an owner who is nothing else, and somebody without a role: none", () => {
    expect(seenBy("director")).toBe("all");
    expect(seenBy("owner")).toEqual([]);
    expect(seenBy("nothing")).toEqual([]);
  });

  it("somebody who has left, somebody of no academy and a person of another: nobody at all", async () => {
    expect(() => seenBy("gone")).toThrow("nobody here");
    expect(() => seenBy("unknown")).toThrow("nobody here");
    expect(await admitAs("own", "gone")).toBeNull();
    expect(await admitAs("demo", "coach")).toBeNull();
    const { db } = academy.viewer;
    expect(
      admitPerson({ db, academyId: "elsewhere", choice: "own" }, "coach", { choice: null, locale: null }),
    ).toBeNull();
  });

  it("the gate proves those students and no other, nor one that nobody has", async () => {
    const viewer = await admitAs("own", "coach");
    const proved = [...STUDENTS, "unknown", "", "own'--"].filter((id) => viewer && admitToStudent(viewer, id));
    expect(proved).toEqual(["own", "covered"]);
  });

  it("a charge ended by hand ends with the next request", async () => {
    give("covered-later", "other", "own", dayFrom(0), null);
    expect(seenBy("other")).toEqual(["covered-later", "foreign"]);
    updateChargeEnded(academy.viewer.db, "other-covered-later", { endedAt: NOW, endedBy: "x" });
    expect(seenBy("other")).toEqual(["foreign"]);
  });

  it("a coach's archive of everybody holds goals of own students and of the academy, and of nobody else", async () => {
    const { db, scope } = academy.viewer;
    const band = {
      fundamentalId: "hinge",
      clubGroup: "iron",
      ageFrom: null,
      ageTo: null,
      low: 85,
      high: null,
    } as const;
    for (const studentId of ["own", "foreign", null])
      insertGoalBand(
        db,
        scope,
        { ...band, scope: studentId ? "student" : "academy", studentId, from: "2031-01-01", reason: "wrist" },
        countingStamp(`band-${studentId}-`),
      );
    const viewer = await admitAs("own", "coach");
    if (!viewer) throw new Error("no coach");
    const { archive } = await loadArchive(viewer, "everybody");
    expect(archive.rules.goalBands.map(({ studentId }) => studentId).sort()).toEqual(["own", null].sort());
    expect(JSON.stringify(archive)).not.toContain("foreign");
  });
});
