import { beforeEach, describe, expect, it } from "vitest";
import type { Database } from "@/db/client";
import { readDrillsUnderWay, readPausesUnderWay } from "@/db/read/under-way";
import { academyScope } from "../academy-fixture";
import { openFilledAcademy } from "../filled-academy";

let db: Database;
beforeEach(async () => {
  db = await openFilledAcademy();
});

const drills = (day: string) =>
  readDrillsUnderWay(db, academyScope(), day).map(({ drill, start }) => `${drill} ${start}`);
const pauses = (day: string) =>
  readPausesUnderWay(db, academyScope(), day).map(({ day: from, endDay }) => [from, endDay]);

describe("drills under way", () => {
  it("from the first day on, the last day counted in; what was taken back was given to nobody", () => {
    expect(drills("2031-01-01")).toEqual([]);
    expect(drills("2031-01-02")).toEqual(["Wall 2031-01-02"]);
    db.sqlite.exec("UPDATE drill_assignment SET end_day = '2031-01-05'");
    expect([drills("2031-01-05").length, drills("2031-01-06").length]).toEqual([1, 0]);
    db.sqlite.exec("UPDATE drill_assignment SET end_day = NULL, voided_at = '2031-01-03T00:00:00Z'");
    expect(drills("2031-01-04")).toEqual([]);
  });
});

describe("pauses under way", () => {
  it("breaks and pauses of whatever kind by their days alone; growth is none", () => {
    expect(pauses("2031-02-01")).toEqual([]);
    for (const kind of ["break", "pause", "injury"]) {
      db.sqlite.prepare("UPDATE event SET kind = ?, end_day = '2031-02-01', place = 'back'").run(kind);
      expect(pauses("2031-02-01")).toEqual([["2031-01-02", "2031-02-01"]]);
      expect(pauses("2031-02-02")).toEqual([]);
      expect(JSON.stringify(readPausesUnderWay(db, academyScope(), "2031-02-01"))).not.toMatch(/back|injury/);
    }
    db.sqlite.exec("UPDATE event SET end_day = NULL");
    expect(pauses("2032-01-01")).toEqual([["2031-01-02", null]]);
    db.sqlite.exec("UPDATE event SET voided_at = '2031-01-03T00:00:00Z'");
    expect(pauses("2032-01-01")).toEqual([]);
  });
});
