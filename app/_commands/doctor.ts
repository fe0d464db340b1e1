import { existsSync, statfsSync, statSync } from "node:fs";
import path from "node:path";
import { ACADEMY_CHOICES, type AcademyChoice, databaseFile, dataFolder } from "@/app/_server/database";
import { findHolder } from "@/app/_server/door/server-lock";
import { checkBackup } from "@/db/backup";
import { type Database, openDatabase } from "@/db/client";
import { readMigrationCounts } from "@/db/read/migrations";
import { wordsFor } from "@/lib/words/catalogue";
import { countRows } from "./count-rows";
import { sayProblem } from "./say-problem";

const words = wordsFor("en");
const LEAST_FREE_MB = 500;

interface Finding {
  readonly state: "ok" | "bad";
  readonly line: string;
}

function found(state: Finding["state"], key: string, args = {}): Finding {
  return { state, line: words.say(key, args) };
}

function lookAtNode(): Finding {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  const node = process.versions.node;
  if (major !== 20 || minor < 19) return found("bad", "doctor.nodeWrong", { node });
  const db = openDatabase(":memory:");
  const sqlite = db.sqlite.prepare<[], string>("SELECT sqlite_version()").pluck().get() ?? "";
  db.close();
  return found("ok", "doctor.node", { node, sqlite });
}

function lookAtSpace(folder: string): Finding {
  const { bavail, bsize } = statfsSync(existsSync(folder) ? folder : ".");
  const free = Math.floor((bavail * bsize) / 1e6);
  return found(free < LEAST_FREE_MB ? "bad" : "ok", free < LEAST_FREE_MB ? "doctor.spaceLow" : "doctor.space", {
    free,
  });
}

function lookAtMode(target: string): Finding {
  const stat = statSync(target);
  const mode = (stat.mode & 0o777).toString(8);
  const wanted = stat.isDirectory() ? "700" : "600";
  if ((stat.mode & 0o077) === 0) return found("ok", "doctor.folder", { folder: target });
  return found("bad", "doctor.folderOpen", { folder: target, mode, wanted });
}

function lookAtMigrations(db: Database, academy: string): Finding {
  const { applied, known } = readMigrationCounts(db);
  if (applied > known) return found("bad", "doctor.ahead", { academy });
  if (applied < known) return found("ok", "doctor.behind", { academy, count: known - applied });
  return found("ok", "doctor.migrations", { academy });
}

async function lookAtAcademy(choice: AcademyChoice): Promise<Finding[]> {
  const file = databaseFile(choice);
  if (!existsSync(file)) return [found("ok", "doctor.absent", { academy: choice })];
  const findings = [path.dirname(file), file, `${file}-wal`].filter((each) => existsSync(each)).map(lookAtMode);
  const check = await checkBackup(file);
  if (check.kind === "unsound") {
    const problem = check.problems.map((each) => sayProblem(words, each)).join("; ");
    return [...findings, found("bad", "doctor.damaged", { academy: choice, problem })];
  }
  const db = openDatabase(file, "read");
  try {
    const sound = found("ok", "doctor.integrity", { academy: choice, ...countRows(check.tables) });
    return [...findings, sound, lookAtMigrations(db, choice)];
  } finally {
    db.close();
  }
}

async function doctor(): Promise<number> {
  const folder = dataFolder();
  const findings = [lookAtNode(), lookAtSpace(folder)];
  if (existsSync(folder)) findings.push(lookAtMode(folder));
  for (const choice of ACADEMY_CHOICES) findings.push(...(await lookAtAcademy(choice)));
  const holder = findHolder(folder);
  const serving = { pid: String(holder?.pid), port: String(holder?.port) };
  findings.push(holder ? found("ok", "doctor.serving", serving) : found("ok", "doctor.notServing"));
  for (const { state, line } of findings) console.log(words.say(`doctor.${state}`, { line }));
  const count = findings.filter((finding) => finding.state === "bad").length;
  console.log(`\n${count === 0 ? words.say("doctor.sound") : words.say("doctor.unsound", { count })}`);
  return count === 0 ? 0 : 1;
}

doctor().then((status) => {
  process.exitCode = status;
});
