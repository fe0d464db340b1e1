import { expect, test } from "vitest";
import { digestTables } from "@/db/digest";
import { readReadBackCandidates, readReadBackItems, readReadBacks } from "@/db/read/read-backs";
import { readReadingsInForce } from "@/db/read/readings";
import {
  insertReadBack,
  updateReadBackDropped,
  updateReadBackFinished,
  updateReadBackTyped,
} from "@/db/write/read-backs";
import { insertSession } from "@/db/write/sessions";
import { countingStamp, NOW, openAcademy, revisionOf, sessionOn, studentScope, swings } from "../academy-fixture";

const BY = { reader: "Coach", who: "Coach", drawnAt: NOW };
const WISH = { fundamentalId: "setup-tilt", view: "face-on" } as const;

async function academyWithFilm() {
  const db = await openAcademy();
  const stamp = { ...countingStamp("film"), batchId: null };
  insertSession(db, studentScope(), sessionOn("2031-01-03", { swings: swings(81, 82, 83), reader: "Coach" }), stamp);
  const swingIds = readReadBackCandidates(db, studentScope(), WISH).map(({ swingId }) => swingId);
  const items = swingIds.map((swingId) => ({ swingId, filmReference: `shelf ${swingId}` }));
  return { db, items };
}

test("swings without a reading of it are candidates; a swing of another student can't be drawn, and nothing is written", async () => {
  const { db, items } = await academyWithFilm();
  expect(items).toHaveLength(3);
  expect(readReadBackCandidates(db, studentScope(), { ...WISH, fundamentalId: "hinge" })).toEqual([]);
  const draw = { id: "rb1", fundamentalId: "setup-tilt", ...BY, items } as const;
  expect(() => insertReadBack(db, studentScope("s2"), draw)).toThrow("no such swing of this student");
  expect(readReadBacks(db, studentScope("s2"))).toEqual([]);
  insertReadBack(db, studentScope(), draw);
  expect(readReadBackItems(db, studentScope(), "rb1").map(({ place, typed }) => [place, typed])).toEqual([
    [1, null],
    [2, null],
    [3, null],
  ]);
  expect(readReadBackItems(db, studentScope("s2"), "rb1")).toEqual([]);
});

test("typed, emptied, ended: one revision at the end and none before; ended or given up it takes nothing more", async () => {
  const { db, items } = await academyWithFilm();
  insertReadBack(db, studentScope(), { id: "rb1", fundamentalId: "setup-tilt", ...BY, items });
  insertReadBack(db, studentScope(), { id: "rb2", fundamentalId: "setup-tilt", ...BY, items });
  const revision = revisionOf(db) ?? 0;
  const type = (id: string, place: number, typed: string | null) =>
    updateReadBackTyped(db, studentScope(), id, [{ place, typed }]);
  expect([type("rb1", 1, "7"), type("rb1", 1, "7"), type("rb1", 2, "8"), type("rb1", 2, null)]).toEqual([1, 0, 1, 1]);
  expect(updateReadBackTyped(db, studentScope("s2"), "rb1", [{ place: 3, typed: "9" }])).toBe(0);
  expect(revisionOf(db)).toBe(revision);
  const end = (values: readonly [number, number | null][]) =>
    updateReadBackFinished(db, studentScope(), "rb1", {
      now: NOW,
      values: values.map(([place, value]) => ({ place, value, typed: String(value), unit: "deg" })),
    });
  expect(end([])).toEqual({ kind: "empty" });
  expect(end([[1, 7]])).toEqual({ kind: "finished", entered: 1, passed: 0 });
  expect(end([[2, 8]])).toEqual({ kind: "not-open" });
  expect(revisionOf(db)).toBe(revision + 1);
  expect(readReadingsInForce(db, studentScope(), { fundamentalId: "setup-tilt" })).toMatchObject([
    { swing: 1, value: 7, typed: "7", signRule: "neutral" },
  ]);
  const before = await digestTables(db, ["read_back_item", "reading"]);
  expect(updateReadBackDropped(db, studentScope(), "rb2", NOW).kind).toBe("dropped");
  expect([type("rb1", 3, "9"), type("rb2", 3, "9")]).toEqual([0, 0]);
  expect(await digestTables(db, ["read_back_item", "reading"])).toEqual(before);
});
