import { randomUUID } from "node:crypto";
import type { Viewer } from "@/app/_server/gate";
import { insertStudent } from "@/db/write/students";
import { randomFrom } from "@/seed/random";

/** What a season of each student holds. */
export interface BigShape {
  readonly sessions: number;
  readonly swings: number;
  /** Ids, each with the level of its values. */
  readonly read: readonly (readonly [string, number])[];
}

/** As a coach films: 25 sessions of 5 swings and 6 fundamentals. */
export const USUAL: BigShape = {
  sessions: 25,
  swings: 5,
  read: [
    ["top-tilt", 12],
    ["impact-tilt", 15],
    ["foot-line", 1],
    ["setup-tilt", 6],
    ["posture-bend", 37],
    ["hinge", 88],
  ],
};

/** Many readings and few tracks: little to judge. */
export const CROWDED: BigShape = { sessions: 5, swings: 400, read: [["hinge", 88]] };

/** A file in long form with so many readings, and the names in it. */
export function bigFile(
  readings: number,
  seed: number,
  { sessions, swings, read }: BigShape = USUAL,
): { readonly bytes: Uint8Array; readonly rows: number; readonly aliases: readonly string[] } {
  const random = randomFrom(seed, 0);
  const students = Math.ceil(readings / (sessions * swings * read.length));
  const aliases = Array.from({ length: students }, (_, place) => `Bench ${1000 + place}`);
  const lines = ["student,date,club,club group,reader,swing,fundamental,value,unit"];
  for (const alias of aliases)
    for (let session = 0; session < sessions; session++) {
      const day = new Date(Date.UTC(2026, 0, 2 + session * 7)).toISOString().slice(0, 10);
      for (let swing = 1; swing <= swings; swing++)
        for (const [id, level] of read) {
          const value = (level + 6 * (random.uniform() - 0.5)).toFixed(1);
          lines.push(`${alias},${day},7-iron,iron,Bench,${swing},${id},${value},deg`);
        }
    }
  const kept = lines.slice(0, readings + 1);
  return { bytes: new TextEncoder().encode(`${kept.join("\n")}\n`), rows: readings, aliases };
}

/** The students of a big file, with consent. */
export function enterBigStudents(viewer: Viewer, aliases: readonly string[]): void {
  const consent = {
    kind: "measure",
    givenBy: "on paper",
    giverIs: "student",
    from: "2026-01-01",
    until: null,
    withdrawnOn: null,
  } as const;
  const student = { birthYear: 2000, hand: "right", zone: "Europe/Berlin", clubs: "" } as const;
  for (const alias of aliases)
    insertStudent(viewer.db, viewer.scope, { id: randomUUID(), alias, ...student }, consent, {
      now: "2026-01-01T08:00:00.000Z",
      newId: randomUUID,
    });
}
