import { afterEach, beforeEach, expect, it } from "vitest";
import type { Database } from "@/db/client";
import { readAcademyWaiting, readWaiting } from "@/db/read/waiting";
import { insertWaiting, updateWaitingEnded } from "@/db/write/waiting";
import { academyScope, NOW, openAcademy, studentScope } from "../academy-fixture";

let db: Database;
beforeEach(async () => {
  db = await openAcademy();
});
afterEach(() => db.close());

const begin = (id: string, fromDay: string, fundamentalId = "hinge") =>
  insertWaiting(db, studentScope(), { id, fundamentalId, fromDay, who: "Bo", recordedAt: NOW });
const end = (until: string, fundamentalId = "hinge") =>
  updateWaitingEnded(db, studentScope(), { fundamentalId, until, now: NOW });
const days = () =>
  readWaiting(db, studentScope()).map(({ fromDay, untilDay, voidedAt }) => [fromDay, untilDay, voidedAt]);

it("lasts from its day until it is ended, once, and may begin again", () => {
  expect(begin("w1", "2031-01-05")).toBe("updated");
  expect(begin("w2", "2031-01-06")).toBe("unchanged");
  expect(begin("w3", "2031-01-06", "hip-sway")).toBe("updated");
  expect(end("2031-02-01")).toBe("updated");
  expect(end("2031-02-02")).toBe("unchanged");
  expect(begin("w4", "2031-03-01")).toBe("updated");
  expect(days()).toEqual([
    ["2031-01-05", "2031-02-01", null],
    ["2031-01-06", null, null],
    ["2031-03-01", null, null],
  ]);
});

it("that ends before its first day was none, and stays on file as taken back", () => {
  begin("w1", "2031-01-05");
  expect(end("2031-01-04")).toBe("updated");
  expect(days()).toEqual([["2031-01-05", null, NOW]]);
  expect(readAcademyWaiting(db, academyScope(), "hinge")).toEqual([]);
  expect(begin("w2", "2031-01-05")).toBe("updated");
  expect(readAcademyWaiting(db, academyScope(), "hinge")).toEqual([
    { studentId: "s1", fromDay: "2031-01-05", untilDay: null },
  ]);
});
