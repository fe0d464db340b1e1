import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { readClock } from "@/app/_server/clock";
import { bodyOf } from "@/app/_server/draft/form-draft";
import { keepDraft } from "@/app/_server/draft/keep-draft";
import { loadDropped, loadUnfinished, moveDraft } from "@/app/_server/draft/unfinished";
import type { StudentViewer } from "@/app/_server/gate";
import { addSession } from "@/app/_server/session/session-desk";
import { digestTables } from "@/db/backup";
import { readDraft } from "@/db/read/drafts";
import { readSessions } from "@/db/read/sessions";
import { startAcademy } from "../app/server/own-academy-data";
import { formOf, sessionFields, viewerOfAri } from "./own-academy";

// D8: the clock goes back 2 hours, or ahead 10 years.

const HOUR = 3_600_000;
const JUMPS: readonly [string, number][] = [
  ["back 2 hours", -2 * HOUR],
  ["ahead 10 years", 10 * 365.25 * 24 * HOUR],
];

let viewer: StudentViewer;
let remove: () => void;

beforeEach(async () => {
  ({ remove } = await startAcademy());
  viewer = await viewerOfAri();
});
afterEach(() => {
  vi.useRealTimers();
  remove();
});

function jump(by: number): void {
  vi.useFakeTimers({ toFake: ["Date"], now: Date.now() + by });
}

function keep(id: string, turn: number, note: string, version: number, writer = "a") {
  const { studentId } = viewer.student;
  const entries = [["note", note]] as const;
  return keepDraft(viewer, { draft: id, form: "session-form", studentId, version, writer, turn, entries, settles: "" });
}

async function add(fields: Record<string, string>): Promise<string> {
  const outcome = await addSession(viewer, formOf(fields));
  if (outcome.kind !== "added") throw new Error("refused");
  return outcome.sessionId;
}

describe.each(JUMPS)("D8: the clock goes %s", (_name, by) => {
  it("sessions of a day stay in the order of their sequence, not of the clock", async () => {
    const first = await add(sessionFields("2026-09-01"));
    jump(by);
    const second = await add(sessionFields("2026-09-01"));
    const sessions = readSessions(viewer.db, viewer.student);
    expect(sessions.map(({ id, sequence }) => [id, sequence])).toEqual([
      [first, 1],
      [second, 2],
    ]);
  });

  it("the newest keep of a form stands, an outdated one is told, and a saved form stays saved", async () => {
    const id = randomUUID();
    keep(id, 1, "before", 0);
    jump(by);
    expect(keep(id, 2, "after", 1)).toMatchObject({ kind: "kept", version: 2 });
    expect(keep(id, 1, "before", 1).kind).toBe("kept");
    expect(keep(id, 1, "elsewhere", 1, "b").kind).toBe("changed");
    const row = readDraft(viewer.db, viewer.scope, id);
    expect(row && bodyOf(row).entries).toEqual([["note", "after"]]);
    vi.useRealTimers();
    const fields = sessionFields("2026-09-01");
    const saved = await add(fields);
    jump(by);
    expect(await add(fields)).toBe(saved);
  });

  it("nothing is erased by the jump: unfinished and dropped forms, readings and receipts are all there", async () => {
    await add(sessionFields("2026-09-01"));
    const [kept, dropped] = [randomUUID(), randomUUID()];
    keep(kept, 1, "kept", 0);
    keep(dropped, 1, "dropped", 0);
    moveDraft(viewer, dropped, "dropped");
    const tables = ["session", "swing", "reading", "correction", "draft", "form_receipt", "student", "consent"];
    const before = await digestTables(viewer.db, tables);
    jump(by);
    expect(Math.abs(readClock().getTime() - by - vi.getRealSystemTime())).toBeLessThan(HOUR);
    expect(loadUnfinished(viewer).map((each) => each.id)).toEqual([kept]);
    expect(loadDropped(viewer).map((each) => each.id)).toEqual([dropped]);
    expect(await digestTables(viewer.db, tables)).toEqual(before);
  });
});
