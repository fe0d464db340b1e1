import fc from "fast-check";
import { expect, test } from "vitest";
import { digestTables } from "@/db/digest";
import { readEventLog, readEvents, readRebaselines } from "@/db/read/events";
import { insertEvent, insertRebaseline, updateEventVoided, updatePainFrom } from "@/db/write/events";
import { NOW, openAcademy, painScope, revisionOf, studentScope } from "../academy-fixture";

const clubs = { id: "e1", kind: "new-club", day: "2031-02-02", note: "", rebaselines: ["hinge"] } as const;
const pause = { ...clubs, id: "e2", kind: "injury", endDay: "2031-03-01", place: "wrist", rebaselines: [] } as const;
const by = { who: "Coach", now: NOW };

test("an event bears who recorded it and when, a pause its place and its last day", async () => {
  const db = await openAcademy();
  insertEvent(db, studentScope(), pause, by);
  expect(readEventLog(db, studentScope(), painScope())).toEqual([
    { ...pause, who: "Coach", recordedAt: NOW, voidedAt: null },
  ]);
  expect(readEvents(db, studentScope())).toEqual([{ ...pause, kind: "pause", place: null }]);
});

test("without proof of this very student a pause has its days and nothing else; what is mended blindly keeps what it said", async () => {
  const db = await openAcademy();
  insertEvent(db, studentScope(), { ...pause, rebaselines: ["hinge"] }, by);
  insertRebaseline(db, studentScope(), { eventId: "e2", after: ["hip-sway"], why: "the wrist hurts", ...by });
  for (const proof of [null, painScope("s2")]) {
    const [read] = readEventLog(db, studentScope(), proof);
    expect([read?.kind, read?.place, read?.note, read?.endDay]).toEqual(["pause", null, "", "2031-03-01"]);
    expect(readRebaselines(db, studentScope(), proof).map(({ why }) => why)).toEqual([""]);
  }
  expect(readRebaselines(db, studentScope(), painScope())[0]?.why).toBe("the wrist hurts");
  insertEvent(db, studentScope(), { ...pause, id: "e3", kind: "pause", place: null, endDay: "2031-03-09" }, by);
  insertEvent(db, studentScope(), { ...clubs, id: "e4" }, by);
  for (const to of ["e3", "e4"]) updatePainFrom(db, studentScope(), { from: "e2", to });
  updatePainFrom(db, studentScope("s2"), { from: "e2", to: "e1" });
  expect(readEventLog(db, studentScope(), painScope()).map(({ id, kind, place }) => [id, kind, place])).toEqual([
    ["e2", "injury", "wrist"],
    ["e3", "injury", "wrist"],
    ["e4", "new-club", null],
  ]);
});

test("taken back it is in the list and nowhere else; put back, everything is as it was, letter by letter", async () => {
  const db = await openAcademy();
  insertEvent(db, studentScope(), clubs, by);
  insertEvent(db, studentScope(), pause, by);
  const before = [await digestTables(db, ["event"]), readEvents(db, studentScope())];
  await fc.assert(
    fc.asyncProperty(fc.array(fc.constantFrom("e1", "e2", "e3"), { maxLength: 12 }), async (taken) => {
      for (const eventId of taken) updateEventVoided(db, studentScope(), { eventId, voidedAt: NOW });
      const gone = new Set<string>(taken);
      expect(readEvents(db, studentScope()).map(({ id }) => id)).toEqual(["e1", "e2"].filter((id) => !gone.has(id)));
      expect(readEventLog(db, studentScope(), null)).toHaveLength(2);
      for (const eventId of [...taken].reverse()) updateEventVoided(db, studentScope(), { eventId, voidedAt: null });
      expect([await digestTables(db, ["event"]), readEvents(db, studentScope())]).toEqual(before);
    }),
    { numRuns: 60, seed: 15 },
  );
});

test("another student's event can't be taken back, nor begin anything anew; nothing is written", async () => {
  const db = await openAcademy();
  insertEvent(db, studentScope(), clubs, by);
  expect(updateEventVoided(db, studentScope("s2"), { eventId: "e1", voidedAt: NOW })).toEqual({ kind: "unchanged" });
  const change = { eventId: "e1", after: [], why: "no", ...by };
  expect(insertRebaseline(db, studentScope("s2"), change)).toEqual({ kind: "unchanged" });
  expect([readEvents(db, studentScope()), revisionOf(db)]).toEqual([[{ ...clubs, endDay: null, place: null }], 1]);
});

test("what begins anew is changed with a row for each change; another change undoes it, and both stay", async () => {
  const db = await openAcademy();
  insertEvent(db, studentScope(), clubs, by);
  const before = await digestTables(db, ["event"]);
  const change = (after: readonly string[], why: string) =>
    insertRebaseline(db, studentScope(), { eventId: "e1", after, why, ...by }).kind;
  expect([change(["hip-sway", "hinge"], "longer"), change(["hinge", "hip-sway"], "again")]).toEqual([
    "changed",
    "unchanged",
  ]);
  expect(readEvents(db, studentScope())[0]?.rebaselines).toEqual(["hip-sway", "hinge"]);
  expect(change(["hinge"], "not longer after all")).toBe("changed");
  expect(await digestTables(db, ["event"])).toEqual(before);
  expect(readRebaselines(db, studentScope(), null).map(({ before: b, after, why }) => [b, after, why])).toEqual([
    [["hinge"], ["hip-sway", "hinge"], "longer"],
    [["hip-sway", "hinge"], ["hinge"], "not longer after all"],
  ]);
  updateEventVoided(db, studentScope(), { eventId: "e1", voidedAt: NOW });
  expect(change([], "taken back meanwhile")).toBe("unchanged");
});
