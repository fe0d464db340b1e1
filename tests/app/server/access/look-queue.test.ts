import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { keepLooks, type Look, SAME_LOOK_MS } from "@/app/_server/access/look-queue";
import { closeDatabases, databaseFile } from "@/app/_server/database";
import { closeGate } from "@/app/_server/import/write-gate";
import { type Database, openDatabase } from "@/db/client";
import { fillDisk, freeDisk, lockDisk, startImpatient } from "../failing-disk";

type Academy = Awaited<ReturnType<typeof startImpatient>>;
let academy: Academy;
let db: Database;
let hour = 0;

beforeAll(async () => {
  academy = await startImpatient();
  ({ db } = academy.viewer);
});
beforeEach(() => {
  vi.useFakeTimers({
    now: Date.parse("2031-03-01T10:00:00.000Z") + 3_600_000 * hour++,
    toFake: ["Date", "setTimeout", "clearTimeout"],
  });
  db.sqlite.exec("DELETE FROM record_view");
});
afterEach(() => {
  vi.useRealTimers();
});
afterAll(() => academy.remove());

const look = (change: Partial<Look["view"]> = {}): Look => ({
  scope: academy.mine.student,
  view: {
    who: "Wren",
    role: "coach",
    what: "page",
    place: "/students/[studentId]",
    viewedAt: "2031-03-01T10:00:00.000Z",
    ...change,
  },
});
const kept = (file: Database = db): string[] =>
  file.sqlite.prepare<[], string>("SELECT who || ' ' || place FROM record_view ORDER BY id").pluck().all();
const named = (...names: string[]) => names.map((who) => `${who} /students/[studentId]`);
const later = (milliseconds: number) => vi.advanceTimersByTime(milliseconds);
const errors = () => vi.spyOn(process.stderr, "write").mockImplementation(() => true);

describe("a look at a record", () => {
  it("is on the disk before the page is sent, and is never changed", () => {
    keepLooks(db, [look()]);
    expect(kept()).toEqual(named("Wren"));
    expect(() => db.sqlite.exec("UPDATE record_view SET who = 'nobody'")).toThrow("never changed");
  });

  it("is one within a minute, by the same person at the same place; each file is one of its own", () => {
    keepLooks(db, [look()]);
    later(SAME_LOOK_MS - 1);
    keepLooks(db, [look()]);
    expect(kept()).toHaveLength(1);
    keepLooks(db, [look({ who: "Lark" }), look({ place: "/students/[studentId]/events" })]);
    expect(kept()).toHaveLength(3);
    later(1);
    keepLooks(db, [look()]);
    expect(kept()).toHaveLength(4);
    for (let times = 0; times < 3; times++) keepLooks(db, [look({ what: "file" })]);
    expect(kept()).toHaveLength(7);
  });

  it("waits while an import is written, and is written when that is over: in the order in which they happened", async () => {
    vi.useRealTimers();
    const open = await closeGate();
    for (const who of ["A", "B", "C"]) keepLooks(db, [look({ who })]);
    expect(kept()).toEqual([]);
    open();
    await vi.waitFor(() => expect(kept()).toEqual(named("A", "B", "C")), { timeout: 30_000 });
  });

  it("waits while another program writes: no page stands still meanwhile", () => {
    const log = errors();
    db.sqlite.pragma("busy_timeout = 5000");
    lockDisk();
    const before = performance.now();
    keepLooks(db, [look({ who: "D" })]);
    keepLooks(db, [look({ who: "E" })]);
    // One wait for the other program would take the five seconds.
    expect(performance.now() - before).toBeLessThan(5000);
    expect(db.sqlite.pragma("busy_timeout", { simple: true })).toBe(5000);
    freeDisk(academy.viewer);
    later(1000);
    expect(kept()).toEqual(named("D", "E"));
    expect(log.mock.calls.flat().join("")).toMatch(/busy.*1 look waits/);
    log.mockRestore();
  });

  it("waits while the disk is full, which is logged once and without a name; room heals it", () => {
    const log = errors();
    // As large as a record, so that no page of the file has room.
    const long = "x".repeat(3_000_000);
    fillDisk(academy.viewer);
    keepLooks(db, [look({ who: long })]);
    later(5000);
    expect(kept()).toEqual([]);
    expect(log.mock.calls).toHaveLength(1);
    expect(String(log.mock.calls[0]?.[0])).toMatch(/\(full\)/);
    expect(String(log.mock.calls[0]?.[0])).not.toContain("xxx");
    freeDisk(academy.viewer);
    later(1000);
    expect(kept()).toEqual(named(long));
    log.mockRestore();
  });

  it("of a student who was erased meanwhile leaves nothing, and holds no other up", () => {
    const gone = { ...academy.mine.student, studentId: "gone" } as Look["scope"];
    keepLooks(db, [{ ...look({ who: "F" }), scope: gone }, look({ who: "G" })]);
    expect(kept()).toEqual(named("G"));
  });

  it("that waits is written when the program ends", async () => {
    vi.useRealTimers();
    const open = await closeGate();
    keepLooks(db, [look({ who: "H" })]);
    expect(kept()).toEqual([]);
    closeDatabases();
    const again = openDatabase(databaseFile("own"), "read");
    expect(kept(again)).toEqual(named("H"));
    again.close();
    open();
  });
});
