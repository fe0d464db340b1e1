import { existsSync, writeFileSync } from "node:fs";
import path from "node:path";
import { noteLooks } from "@/app/_server/access/looks";
import { loadArchive } from "@/app/_server/archive/load-archive";
import { packArchive } from "@/app/_server/archive/pack-archive";
import { ACADEMY_CHOICES, type AcademyChoice, closeDatabases } from "@/app/_server/database";
import { admitMachine, admitToStudent } from "@/app/_server/gate";
import { readStudents } from "@/db/read/students";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");

interface ExportArguments {
  readonly out: string;
  readonly academy: AcademyChoice;
  /** Null: everybody. */
  readonly student: string | null;
}

/** Arguments, or the word that is not understood. */
function readArguments(argv: readonly string[]): ExportArguments | string {
  const given = new Map<string, string>();
  for (let at = 0; at < argv.length; at += 2) {
    const [name, value] = [argv[at] ?? "", argv[at + 1]];
    if (!["--out", "--academy", "--student"].includes(name) || value === undefined) return name;
    given.set(name, value);
  }
  const out = given.get("--out");
  const wished = given.get("--academy") ?? "own";
  const academy = ACADEMY_CHOICES.find((choice) => choice === wished);
  if (!out) return "--out";
  return academy ? { out, academy, student: given.get("--student") ?? null } : wished;
}

function refuse(key: string, args = {}): number {
  console.error(words.say(`export.${key}`, args));
  return 2;
}

async function main(argv: readonly string[]): Promise<number> {
  const args = readArguments(argv);
  if (typeof args === "string") return refuse("usage", { word: args });
  const file = path.resolve(args.out);
  if (existsSync(file)) return refuse("exists", { file });
  const viewer = await admitMachine({ choice: args.academy, locale: "en" });
  if (!viewer || viewer.choice !== args.academy) return refuse("no-academy");
  const wished = args.student?.normalize("NFC");
  const student = readStudents(viewer.db, viewer.scope).find(({ alias }) => alias === wished);
  const scope = student ? admitToStudent(viewer, student.id) : null;
  if (wished !== undefined && !scope) return refuse("no-student", { alias: wished });
  const loaded = await loadArchive(viewer, scope ?? "everybody");
  const students = loaded.archive.students.flatMap(({ id }) => admitToStudent(viewer, id) ?? []);
  noteLooks(viewer, students, "npm run export");
  const bytes = packArchive(viewer, loaded);
  // Only its owner may read it, and a file that came meanwhile is not written over.
  writeFileSync(file, bytes, { mode: 0o600, flag: "wx" });
  const sessions = loaded.archive.students.flatMap((one) => one.sessions);
  const swings = sessions.flatMap((session) => session.swings);
  const counts = {
    students: loaded.archive.students.length,
    sessions: sessions.length,
    readings: swings.reduce((sum, swing) => sum + swing.readings.length, 0),
  };
  console.log(words.say("export.done", { file, ...counts, size: Math.ceil(bytes.length / 1024) }));
  return 0;
}

main(process.argv.slice(2))
  .catch((error: unknown) => {
    console.error(words.say("export.failed", { reason: error instanceof Error ? error.message : String(error) }));
    return 1;
  })
  .then((status) => {
    closeDatabases();
    process.exitCode = status;
  });
