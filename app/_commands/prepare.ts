import { spawnSync } from "node:child_process";
import { renameSync, rmSync } from "node:fs";
import path from "node:path";
import { addDemoPeople } from "@/app/_server/access/demo-people";
import {
  ACADEMY_CHOICES,
  closeDatabases,
  databaseFile,
  dataFolder,
  ensurePrivateFolder,
  findAcademyDatabase,
} from "@/app/_server/database";
import { takeLock } from "@/app/_server/door/server-lock";
import { admitMachine } from "@/app/_server/gate";
import { dropOldFiles } from "@/app/_server/import/past-imports";
import { loadRules } from "@/app/_server/roster/load-verdicts";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");

// Filled aside and then moved: a demo whose filling was broken off is never taken for a whole one.
function fillDemo(): boolean {
  console.log(words.say("prepare.seeding"));
  const aside = path.join(dataFolder(), ".demo-part");
  const demo = path.dirname(databaseFile("demo"));
  rmSync(aside, { recursive: true, force: true });
  ensurePrivateFolder(aside);
  const env = { ...process.env, PROOFBAND_DATA: aside };
  const filled = spawnSync(process.execPath, ["--import", "tsx", path.join("seed", "demo.ts")], {
    env,
    stdio: "inherit",
  });
  if (filled.status !== 0) {
    rmSync(aside, { recursive: true, force: true });
    return false;
  }
  rmSync(demo, { recursive: true, force: true });
  renameSync(path.join(aside, path.basename(demo)), demo);
  rmSync(aside, { recursive: true, force: true });
  return true;
}

/** Judges what is on file and not yet judged, so that the first page is there at once; lets go of files kept long enough. */
async function judge(): Promise<void> {
  for (const choice of ACADEMY_CHOICES) {
    const viewer = await admitMachine({ choice, locale: null });
    if (viewer?.choice !== choice) continue;
    await addDemoPeople(viewer);
    dropOldFiles(viewer);
    await loadRules(viewer);
  }
  closeDatabases();
}

async function prepare(): Promise<string | null> {
  const folder = dataFolder();
  ensurePrivateFolder(folder);
  const lock = takeLock(folder, Number(process.env.PORT || 3000));
  if (lock.kind === "held") {
    const { pid, port } = lock.holder;
    return words.say("prepare.held", { folder, pid: String(pid), port: String(port) });
  }
  try {
    await findAcademyDatabase("own");
    const demo = await findAcademyDatabase("demo");
    closeDatabases();
    if (!demo && !fillDemo()) return words.say("prepare.seedFailed");
    await judge();
    return null;
  } finally {
    lock.release();
  }
}

function refuse(refusal: string): void {
  console.error(refusal);
  process.exitCode = 1;
}

prepare().then(
  (refusal) => {
    if (refusal !== null) refuse(refusal);
  },
  (error: unknown) => {
    const reason = error instanceof Error ? error.message : String(error);
    refuse(words.say("prepare.unusable", { folder: dataFolder(), reason }));
  },
);
