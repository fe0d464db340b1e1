import { randomUUID } from "node:crypto";
import type { Viewer } from "@/app/_server/gate";
import { insertStudent } from "@/db/write/students";
import { randomFrom } from "@/seed/random";

const READ = ["top-tilt", "impact-tilt", "foot-line", "setup-tilt", "posture-bend", "hinge"] as const;
const LEVELS = [12, 15, 1, 6, 37, 88] as const;
const SESSIONS = 25;
const SWINGS = 5;

/** A season of a student holds so many readings. */
const SEASON = SESSIONS * SWINGS * READ.length;

/** A file in long form with so many readings: 25 sessions of 5 swings and 6 fundamentals a student. */
export function bigFile(
  readings: number,
  seed: number,
): { readonly bytes: Uint8Array; readonly rows: number; readonly aliases: readonly string[] } {
  const random = randomFrom(seed, 0);
  const aliases = Array.from({ length: Math.ceil(readings / SEASON) }, (_, place) => `Bench ${1000 + place}`);
  const lines = ["student,date,club,club group,reader,swing,fundamental,value,unit"];
  for (const alias of aliases)
    for (let session = 0; session < SESSIONS; session++) {
      const day = new Date(Date.UTC(2026, 0, 2 + session * 7)).toISOString().slice(0, 10);
      for (let swing = 1; swing <= SWINGS; swing++)
        READ.forEach((id, place) => {
          const value = ((LEVELS[place] ?? 0) + 6 * (random.uniform() - 0.5)).toFixed(1);
          lines.push(`${alias},${day},7-iron,iron,Bench,${swing},${id},${value},deg`);
        });
    }
  const kept = lines.slice(0, readings + 1);
  return { bytes: new TextEncoder().encode(`${kept.join("\n")}\n`), rows: readings, aliases };
}

/** The students of a big file, with consent. */
export function enterBigStudents(viewer: Viewer, aliases: readonly string[]): void {
  const consent = { kind: "measure", givenBy: "on paper", from: "2026-01-01", until: null, withdrawnOn: null } as const;
  const student = { birthYear: 2000, hand: "right", zone: "Europe/Berlin", clubs: "" } as const;
  for (const alias of aliases)
    insertStudent(viewer.db, viewer.scope, { id: randomUUID(), alias, ...student }, consent, {
      now: "2026-01-01T08:00:00.000Z",
      newId: randomUUID,
    });
}
