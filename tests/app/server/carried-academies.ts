import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { admitMachine, admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { openDatabase } from "@/db/client";
import { readStudents } from "@/db/read/students";
import { type Archive, archiveText } from "@/lib/domain/archive";

const ROOT = path.join(import.meta.dirname, "../../..");
/** Enough for pools of the demo to have learned their noise. */
const STUDENTS = 12;

/** A file of another student. */
export const NIA = {
  fileName: "nia.csv",
  file: readFileSync(path.join(ROOT, "seed/samples/season-long.csv")).toString("base64"),
  answers: [
    ["answer:student:nia", "new-right"],
    ["answer-givenBy:student:nia", "herself"],
  ],
} as const;

/** The demo academy in a data folder, with some of its students. */
export function seedDemo(folder: string): void {
  const env = { ...process.env, PROOFBAND_DATA: folder };
  const seeded = spawnSync(process.execPath, ["--import", "tsx", "seed/demo.ts"], { cwd: ROOT, env, encoding: "utf8" });
  if (seeded.status !== 0) throw new Error(seeded.stderr);
  const db = openDatabase(path.join(folder, "demo", "proofband.db"));
  db.sqlite.prepare("DELETE FROM student WHERE id NOT IN (SELECT id FROM student ORDER BY id LIMIT ?)").run(STUDENTS);
  db.close();
}

export const draftOf = (made: Archive, answers: readonly (readonly [string, string])[] = []) => ({
  fileName: "archive.json",
  file: Buffer.from(archiveText(made)).toString("base64"),
  answers,
});

export async function admitted(choice: "demo" | "own"): Promise<Viewer> {
  const viewer = await admitMachine({ choice, locale: null });
  if (!viewer) throw new Error("no academy");
  return viewer;
}

export function studentOf(viewer: Viewer, alias: string): StudentViewer {
  const id = readStudents(viewer.db, viewer.scope).find((student) => student.alias === alias)?.id;
  const student = admitToStudent(viewer, id ?? "");
  if (!student) throw new Error(`no ${alias}`);
  return { ...viewer, student };
}
