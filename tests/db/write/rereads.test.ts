import { describe, expect, test } from "vitest";
import type { Database } from "@/db/client";
import { readReadingsInForce } from "@/db/read/readings";
import { readReaderErrors, readRereadDraws, readRereadItems, readRereadPairs } from "@/db/read/rereads";
import { readTrackKeys } from "@/db/read/tracks";
import {
  insertReaderError,
  insertRereadDraw,
  insertRereadValues,
  insertSameDraw,
  updateDrawFinished,
} from "@/db/write/rereads";
import { academyScope, countRows, NOW, revisionOf, studentScope } from "../academy-fixture";
import { candidatesOf, drawFirst, openReread, typed } from "../rereads-fixture";

const scope = academyScope();
const stamp = { now: NOW, who: "Owner", why: "typed wrongly" };
const keep = (db: Database, ...values: ReturnType<typeof typed>[]) =>
  insertRereadValues(db, scope, "d1", values, stamp);
const finish = (db: Database) => updateDrawFinished(db, scope, "d1", { day: "2031-03-02", now: NOW });

describe("what is read again", () => {
  test("stands beside the first reading, which stays; no verdict's reading, track or revision changes", async () => {
    const db = await openReread();
    const before = [readReadingsInForce(db, studentScope()), readTrackKeys(db, scope), revisionOf(db)];
    drawFirst(db, 4);
    expect(keep(db, typed(1, 81), typed(2, 82.5))).toEqual({ written: 2, corrected: 0 });
    expect([readReadingsInForce(db, studentScope()), readTrackKeys(db, scope), revisionOf(db)]).toEqual(before);
    const rows = db.sqlite.prepare("SELECT reread, value, typed, sign_rule FROM reading WHERE reread > 0").all();
    expect(rows).toEqual([
      { reread: 1, value: 81, typed: "81", sign_rule: "neutral" },
      { reread: 1, value: 82.5, typed: "82.5", sign_rule: "neutral" },
    ]);
  });
  test("typed otherwise while the draw is open, it is a correction; the same again writes nothing", async () => {
    const db = await openReread();
    drawFirst(db, 2);
    keep(db, typed(1, 18));
    expect(keep(db, typed(1, 81))).toEqual({ written: 0, corrected: 1 });
    expect(keep(db, typed(1, 81))).toEqual({ written: 0, corrected: 0 });
    expect(readRereadItems(db, scope, "d1").map((item) => item.typed)).toEqual(["81", null]);
    finish(db);
    expect(readRereadPairs(db, scope)).toMatchObject([{ first: 80, again: 81, reader: "Coach", firstReader: "Coach" }]);
  });
  test("of a finished draw nothing is kept any more, nor of another academy's", async () => {
    const db = await openReread();
    drawFirst(db, 2);
    expect(finish(db).kind).toBe("not-open");
    keep(db, typed(1, 81));
    expect(updateDrawFinished(db, academyScope("a2"), "d1", { day: "2031-03-02", now: NOW }).kind).toBe("not-open");
    expect(insertRereadValues(db, academyScope("a2"), "d1", [typed(2, 1)], stamp).written).toBe(0);
    expect([finish(db).kind, finish(db).kind]).toEqual(["finished", "not-open"]);
    expect(keep(db, typed(1, 90), typed(2, 90))).toEqual({ written: 0, corrected: 0 });
  });
  test("a draw can't take another academy's swing: nothing of it is kept", async () => {
    const db = await openReread();
    const [item] = candidatesOf(db);
    if (!item) throw new Error("no candidate");
    const row = { id: "d9", reader: "Coach", level: "b", who: "Owner", day: "2031-03-01", drawnAt: NOW } as const;
    const items = [{ ...item, filmReference: "x", studentId: "t1" }];
    expect(() => insertRereadDraw(db, scope, { ...row, items })).toThrow("no such swing");
    expect(countRows(db, "reread_draw")).toBe(0);
  });
});

describe("a second reader", () => {
  test("gets the same items in the same order, empty, and never becomes the first reader of a swing", async () => {
    const db = await openReread();
    drawFirst(db, 3);
    keep(db, typed(1, 81));
    finish(db);
    const twin = { id: "d2", sameAs: "d1", reader: "Lark", who: "Owner", day: "2031-03-03", drawnAt: "2031-03-03" };
    expect(insertSameDraw(db, academyScope("a2"), { ...twin, id: "d3" }).kind).toBe("not-there");
    expect(insertSameDraw(db, scope, twin).kind).toBe("inserted");
    const [mine, theirs] = ["d1", "d2"].map((id) => readRereadItems(db, scope, id));
    expect(theirs).toEqual(mine?.map((item) => ({ ...item, typed: null })));
    insertRereadValues(db, scope, "d2", [typed(2, 85)], stamp);
    updateDrawFinished(db, scope, "d2", { day: "2031-03-03", now: NOW });
    expect(readRereadPairs(db, scope).at(-1)).toMatchObject({
      firstReader: "Coach",
      reader: "Lark",
      first: 82,
      again: 85,
    });
    expect(readRereadDraws(db, scope).map((draw) => [draw.id, draw.items, draw.read])).toEqual([
      ["d2", 3, 1],
      ["d1", 3, 1],
    ]);
  });
});

describe("a fitted error", () => {
  const fit = {
    fundamentalId: "hinge",
    fromDay: "2031-01-12",
    readerSd: 1.2,
    offsetSd: null,
    pairs: 12,
    shared: 0,
    version: "v",
  };
  test("takes the next number of its fundamental, and stays; who was filmed from its day on is judged anew", async () => {
    const db = await openReread();
    const before = [revisionOf(db), revisionOf(db, "s2"), revisionOf(db, "t1")];
    insertReaderError(db, scope, fit, NOW);
    // Ulla was filmed on 12 January and later, Ferdi on the 6th, the third in another academy.
    expect([revisionOf(db), revisionOf(db, "s2"), revisionOf(db, "t1")]).toEqual([
      (before[0] ?? 0) + 1,
      before[1],
      before[2],
    ]);
    insertReaderError(db, scope, { ...fit, readerSd: 1 }, NOW);
    insertReaderError(db, scope, { ...fit, fundamentalId: "foot-line" }, NOW);
    expect(readReaderErrors(db, scope).map((each) => [each.fundamentalId, each.number, each.readerSd])).toEqual([
      ["foot-line", 1, 1.2],
      ["hinge", 1, 1.2],
      ["hinge", 2, 1],
    ]);
    expect(readReaderErrors(db, academyScope("a2"))).toEqual([]);
  });
});
