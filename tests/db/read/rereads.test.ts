import { expect, test } from "vitest";
import {
  readFilmReach,
  readFirstReaders,
  readRereadCandidates,
  readRereadItems,
  readRereadPairs,
} from "@/db/read/rereads";
import { insertCorrection } from "@/db/write/readings";
import { insertRereadValues, updateDrawFinished } from "@/db/write/rereads";
import { academyScope, NOW, studentScope } from "../academy-fixture";
import { candidatesOf, drawFirst, openReread, typed, WISH } from "../rereads-fixture";

const scope = academyScope();
const stamp = { now: NOW, who: "Owner", why: "typed wrongly" };

test("candidates are the first readings with a value of one reader, with their film, and never with what was read", async () => {
  const db = await openReread();
  const found = candidatesOf(db);
  expect(found.map((each) => each.filmReference)).toEqual([
    ...["shelf 1", "shelf 1", "shelf 1", "shelf 2", "shelf 2", "shelf 2"],
    ...[null, null, null, "shelf 3", "shelf 3", "shelf 3"],
  ]);
  expect(Object.keys(found[0] ?? {}).sort()).toEqual(
    ["studentId", "sessionId", "swingId", "fundamentalId", "readAt", "filmReference", "again"].sort(),
  );
  expect(readRereadCandidates(db, scope, { ...WISH, reader: "Lark" })).toEqual([]);
  expect(readRereadCandidates(db, scope, { ...WISH, view: "down-the-line" })[0]?.filmReference).toBeNull();
  expect([readFirstReaders(db, scope), readFirstReaders(db, academyScope("a2"))]).toEqual([["Coach"], ["Coach"]]);
});

test("of twelve readings of the academy three can't be opened again; from the other view none can", async () => {
  const db = await openReread();
  expect(readFilmReach(db, scope, WISH)).toEqual({ readings: 12, noReference: 3 });
  expect(readFilmReach(db, scope, { ...WISH, view: "down-the-line" })).toEqual({ readings: 12, noReference: 12 });
});

test("a correction makes a reading as fresh as itself; one to not measurable takes it away", async () => {
  const db = await openReread();
  const correct = (readingId: number, value: number | null) =>
    insertCorrection(db, studentScope(), {
      readingId,
      value,
      typed: String(value),
      who: "Coach",
      why: "digit",
      now: NOW,
    });
  correct(1, 79);
  correct(2, null);
  const found = candidatesOf(db);
  expect(found).toHaveLength(11);
  expect(found[0]?.readAt).toBe(NOW);
});

test("what stands in a draw is marked for its reader and level: read, or still open; unread in a finished draw it is free again", async () => {
  const db = await openReread();
  drawFirst(db, 2);
  const marks = () =>
    candidatesOf(db)
      .slice(0, 3)
      .map((each) => each.again);
  expect(marks()).toEqual(["yes", "yes", "no"]);
  expect(readRereadCandidates(db, scope, { ...WISH, level: "a" })[0]?.again).toBe("no");
  insertRereadValues(db, scope, "d1", [typed(1, 81)], stamp);
  updateDrawFinished(db, scope, "d1", { day: "2031-03-02", now: NOW });
  expect(marks()).toEqual(["yes", "no", "no"]);
});

test("items hold the film, the swing and this time's value alone", async () => {
  const db = await openReread();
  drawFirst(db, 2);
  expect(readRereadItems(db, scope, "d1")).toEqual([
    { place: 1, fundamentalId: "hinge", filmReference: "shelf 1", swing: 1, typed: null },
    { place: 2, fundamentalId: "hinge", filmReference: "shelf 1", swing: 2, typed: null },
  ]);
  expect(readRereadItems(db, academyScope("a2"), "d1")).toEqual([]);
});

test("pairs are those of finished draws with a value both times; corrected firsts count as corrected", async () => {
  const db = await openReread();
  drawFirst(db, 4);
  insertRereadValues(db, scope, "d1", [typed(1, 81), typed(2, null), typed(3, 80)], stamp);
  expect(readRereadPairs(db, scope)).toEqual([]);
  updateDrawFinished(db, scope, "d1", { day: "2031-03-02", now: NOW });
  insertCorrection(db, studentScope(), { readingId: 3, value: 79, typed: "79", who: "Coach", why: "digit", now: NOW });
  const pair = { drawId: "d1", fundamentalId: "hinge", level: "b", firstReader: "Coach", reader: "Coach" };
  expect(readRereadPairs(db, scope)).toEqual([
    { ...pair, first: 80, again: 81 },
    { ...pair, first: 79, again: 80 },
  ]);
  expect(readRereadPairs(db, academyScope("a2"))).toEqual([]);
});
