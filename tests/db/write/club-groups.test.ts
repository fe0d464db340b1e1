import { describe, expect, test } from "vitest";
import { readClubGrouping, readGroupClubs, readGroupUse, readRegroupings } from "@/db/read/club-groups";
import { readGoalBands } from "@/db/read/goal-bands";
import { readSessions } from "@/db/read/sessions";
import { insertRegrouping } from "@/db/write/club-groups";
import { insertGoalBand } from "@/db/write/goal-bands";
import { insertImport } from "@/db/write/imports";
import { insertSession } from "@/db/write/sessions";
import { arrangeGroups } from "@/lib/domain/arrange-clubs";
import { clubsOfKind } from "@/lib/domain/club";
import { CLUB_KINDS } from "@/lib/domain/club-group";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import { mergeGroups, type Regrouping, splitGroup } from "@/lib/domain/regroup-clubs";
import {
  academyScope,
  countingStamp,
  countRows,
  openAcademy,
  revisionOf,
  sessionOn,
  studentScope,
} from "../academy-fixture";
import { importDoor, planOf } from "../filled-academy";

const made = (change: Regrouping) => {
  if (change.kind !== "ok") throw new Error(JSON.stringify(change.issues));
  return change;
};
const record = { day: "2031-03-02", who: "Owner", why: "coached as one" };
const merged = made(mergeGroups(SHORT_LIST, { first: "hybrid", second: "wood", name: "Long game", goalsOf: "second" }));

async function filmed() {
  const db = await openAcademy();
  const film = (day: string, clubGroup: "hybrid" | "wood" | "iron", club: string | null) => {
    const stamp = { ...countingStamp(`${day}-${clubGroup}`), batchId: null };
    expect(insertSession(db, studentScope(), sessionOn(day, { clubGroup, club }), stamp).kind).toBe("inserted");
  };
  film("2031-02-01", "hybrid", "4h");
  film("2031-02-01", "wood", null);
  film("2031-02-02", "wood", "3w");
  film("2031-02-02", "iron", "7i");
  return db;
}

const nobodyElse = { otherSessions: 0, otherStudents: 0 };

describe("a recorded change of the club groups", () => {
  test("moves just the sessions that it concerns and marks their student; what was said stays", async () => {
    const db = await filmed();
    const [before, other] = [revisionOf(db) ?? 0, revisionOf(db, "s2")];
    expect(insertRegrouping(db, academyScope(), { kind: "merge", change: merged, ...record }, countingStamp())).toEqual(
      {
        kind: "recorded",
        number: 1,
        sessions: 3,
        students: 1,
      },
    );
    expect([revisionOf(db), revisionOf(db, "s2")]).toEqual([before + 1, other]);
    expect(readSessions(db, studentScope()).map(({ day, clubGroup, club }) => [day, clubGroup, club])).toEqual([
      ["2031-02-01", "wood-long-game", "4h"],
      ["2031-02-01", "wood-long-game", null],
      ["2031-02-02", "iron", "7i"],
      ["2031-02-02", "wood-long-game", "3w"],
    ]);
    expect(
      db.sqlite.prepare("SELECT said_club_group FROM session ORDER BY day, said_club_group").pluck().all(),
    ).toEqual(["hybrid", "wood", "iron", "wood"]);
    expect(readRegroupings(db, academyScope())).toMatchObject([
      { number: 1, kind: "merge", from: ["hybrid", "wood"], to: ["wood-long-game"], sessions: 3, ...record },
    ]);
    expect(readClubGrouping(db, studentScope())).toEqual(merged.grouping);
    expect(readClubGrouping(db, academyScope("a2"))).toEqual(SHORT_LIST);
    expect(readGroupUse(db, academyScope())).toEqual([
      { clubGroup: "iron", sessions: 1, students: 1, ...nobodyElse },
      { clubGroup: "wood-long-game", sessions: 3, students: 1, ...nobodyElse },
    ]);
    expect(readGroupUse(db, { ...academyScope(), students: ["s2"] })).toEqual([
      { clubGroup: "iron", sessions: 0, students: 0, otherSessions: 1, otherStudents: 1 },
      { clubGroup: "wood-long-game", sessions: 0, students: 0, otherSessions: 3, otherStudents: 1 },
    ]);
    expect(readGroupClubs(db, academyScope(), "wood-long-game")).toEqual(["4h", null, "3w"]);
  });

  test("split along the kinds again, puts every session back, the one without a club too", async () => {
    const db = await filmed();
    const before = readSessions(db, studentScope());
    insertRegrouping(db, academyScope(), { kind: "merge", change: merged, ...record }, countingStamp());
    const back = made(
      splitGroup(merged.grouping, {
        group: "wood-long-game",
        firstName: "Woods",
        secondName: "Hybrids",
        secondClubs: clubsOfKind("hybrid"),
        rest: "second",
      }),
    );
    insertRegrouping(db, academyScope(), { kind: "split", change: back, ...record }, countingStamp("y"));
    expect(readSessions(db, studentScope())).toEqual(before);
    expect(readRegroupings(db, academyScope()).map(({ kind, sessions }) => [kind, sessions])).toEqual([
      ["merge", 3],
      ["split", 3],
    ]);
  });

  test("a file that was imported before the change means the same sessions after it", async () => {
    const db = await openAcademy();
    const plan = planOf([
      ["Ulla", sessionOn("2031-02-01", { clubGroup: "hybrid", club: "4h", sequence: null })],
      ["Ulla", sessionOn("2031-02-01", { clubGroup: "wood", club: null, sequence: null })],
    ]);
    insertImport(db, academyScope(), plan, importDoor());
    insertRegrouping(db, academyScope(), { kind: "merge", change: merged, ...record }, countingStamp());
    const again = insertImport(db, academyScope(), { ...plan, contentHash: "other" }, importDoor("j"));
    expect(again).toMatchObject({ kind: "imported", sessions: 0, readings: 0, skipped: 6, conflicts: [] });
    expect(countRows(db, "session")).toBe(2);
  });

  test("the academy's own goals hold on in the group that comes, from the same day; brought back, none is doubled", async () => {
    const db = await filmed();
    const band = {
      fundamentalId: "hinge",
      clubGroup: "wood",
      scope: "academy",
      ageFrom: null,
      ageTo: null,
      studentId: null,
      low: 70,
      high: 80,
      from: "2031-02-02",
      reason: "long shaft",
    } as const;
    insertGoalBand(db, academyScope(), band, countingStamp("band"));
    insertRegrouping(db, academyScope(), { kind: "merge", change: merged, ...record }, countingStamp("copy"));
    expect(readGoalBands(db, academyScope()).map(({ clubGroup, from, low }) => [clubGroup, from, low])).toEqual([
      ["wood", "2031-02-02", 70],
      ["wood-long-game", "2031-02-02", 70],
    ]);
    const back = made(
      splitGroup(merged.grouping, {
        group: "wood-long-game",
        firstName: "Woods",
        secondName: "Hybrids",
        secondClubs: clubsOfKind("hybrid"),
        rest: "first",
      }),
    );
    insertRegrouping(db, academyScope(), { kind: "split", change: back, ...record }, countingStamp("again"));
    const bands = readGoalBands(db, academyScope()).map(({ clubGroup }) => clubGroup);
    expect(bands.filter((group) => group === "wood")).toHaveLength(1);
  });

  test("laid out anew only before the first session; afterwards nothing is written", async () => {
    const arranged = made(
      arrangeGroups(
        SHORT_LIST,
        CLUB_KINDS.map((kind, at) => ({ field: `${at}`, name: `My ${kind}`, clubs: clubsOfKind(kind), kind })),
      ),
    );
    const early = await openAcademy();
    const asked = { kind: "arrange", change: arranged, ...record, why: "" } as const;
    expect(insertRegrouping(early, academyScope(), asked, countingStamp())).toMatchObject({
      kind: "recorded",
      sessions: 0,
    });
    const late = await filmed();
    expect(insertRegrouping(late, academyScope(), asked, countingStamp())).toEqual({ kind: "in-use", sessions: 4 });
    expect(readRegroupings(late, academyScope())).toEqual([]);
  });
});
