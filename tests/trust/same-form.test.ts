import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { StudentViewer } from "@/app/_server/gate";
import { addEvent } from "@/app/_server/season/event-desk";
import { addStudent } from "@/app/_server/season/student-desk";
import { saveSession } from "@/app/_server/session/session-desk";
import { startAcademy } from "../app/server/own-academy-data";
import { seededUniform, startChild } from "./child";
import { formOf, sessionFields, viewerOfAri } from "./own-academy";

// D14: the same form sent twice, by a second press, by Back, by parallel retries.

const SEED = 20261127;
const TRIES = 100;

let viewer: StudentViewer;
let folder: string;
let remove: () => void;

beforeEach(async () => {
  const started = await startAcademy();
  ({ folder, remove } = started);
  viewer = await viewerOfAri();
});
afterEach(() => remove());

function count(table: string): number {
  return Number(viewer.db.sqlite.prepare(`SELECT count(*) FROM ${table}`).pluck().get());
}

describe("D14: the same form twice", () => {
  it(`${TRIES} forms, each sent two to five times: one thing saved, one answer`, async () => {
    const uniform = seededUniform(SEED);
    const before = { session: count("session"), student: count("student"), event: count("event") };
    const made = { session: 0, student: 0, event: 0 };
    let sent = 0;
    for (let trial = 0; trial < TRIES; trial++) {
      const times = 2 + Math.floor(uniform() * 4);
      const pick = (["session", "session", "student", "event"] as const)[Math.floor(uniform() * 4)] ?? "session";
      const leading = { draft: randomUUID(), version: "0", writer: randomUUID() };
      const consent = { zone: "UTC", consentGivenBy: "herself", consentOnPaper: "yes" };
      const fields = {
        session: { ...sessionFields("2026-09-01"), ...leading },
        student: { alias: `S${trial}`, hand: "left", ...consent, ...leading },
        event: { kind: "break", day: "2026-09-02", note: "", ...leading },
      }[pick];
      const send = () => {
        const form = formOf(fields as Record<string, string>);
        if (pick === "session") return saveSession(viewer, form);
        return pick === "student" ? addStudent(viewer, form) : addEvent(viewer, form);
      };
      const answers = await Promise.all(Array.from({ length: times }, send));
      sent += times;
      made[pick]++;
      expect(answers[0]?.kind).toBe("added");
      for (const answer of answers) expect(answer).toEqual(answers[0]);
    }
    expect(count("session") - before.session).toBe(made.session);
    expect(count("student") - before.student).toBe(made.student);
    expect(count("event") - before.event).toBe(made.event);
    console.log(`D14: ${TRIES} forms sent ${sent} times, seed ${SEED}`);
  });

  it("retries from four processes at once: one session, one answer to all", async () => {
    const fields = JSON.stringify(sessionFields("2026-09-03"));
    const all = [1, 2, 3, 4].map(() => startChild("sending-process.ts", [fields], { PROOFBAND_DATA: folder }));
    const answers = await Promise.all(all.map((child) => child.saying("answer ")));
    await Promise.all(all.map((child) => child.ended));
    expect(new Set(answers).size).toBe(1);
    expect(answers[0]).toContain('"added"');
    expect(count("session")).toBe(1);
  });
});
