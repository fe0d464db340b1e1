import { type ChildProcess, spawn } from "node:child_process";
import { closeSync, openSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { closeDatabases } from "@/app/_server/database";
import { type Database, openDatabase } from "@/db/client";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { addShared } from "../app/server/family-academy";
import { startPeopleAcademy } from "../app/server/people-academy";
import { enterFilm, filmDays } from "../app/server/reread-season";
import { personalWordsIn } from "./personal-words";
import { FAMILY_LOG, FAMILY_WORDS, served } from "./served";

/** A server of its own: the demo's has stated no public address, and this one's people come in by one. */
export interface FamilyServer {
  readonly address: string;
  readonly student: string;
  readonly sister: string;
  withData<T>(work: (db: Database) => T): T;
  stop(): Promise<void>;
}

const PORT = served.port + 50;

/** An academy with a coach, Bo, and two sisters in Bo's charge, of whom one is filmed and has a drill in hand. */
async function fill(): Promise<{ readonly folder: string; readonly student: string; readonly sister: string }> {
  const academy = await startPeopleAcademy();
  const folder = process.env.PROOFBAND_DATA ?? "";
  await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
  const dot = addShared(academy, "Dot", { birthYear: String(new Date().getFullYear() - 12), by: "bo" });
  const pip = addShared(academy, "Pip", { birthYear: String(new Date().getFullYear() - 7), by: "bo" });
  filmDays(dot).forEach((day, at) => {
    const film = { id: `film${at}`, day, reference: null, now: `${day}T18:00:00.000Z` };
    // A step of 25 degrees in the middle, so that something has changed.
    enterFilm(
      dot,
      dot.student,
      film,
      [1, 2, 3, 4, 5].map((swing) => (at < 4 ? 60 : 85) + swing / 5),
    );
  });
  const drill = { id: "wall", name: "Feet on the rails", fundamentalId: "hinge" };
  const words = { how: "Lay two sticks on the ground like rails.", cautions: "Nobody in front of the ball." };
  insertDrill(dot.db, dot.scope, { ...drill, ...words });
  const start = dayFromNumber(dayNumber(dot.today) - 12);
  const given = { id: "given", drillId: "wall", fundamentalId: "hinge", start, end: null };
  insertAssignment(dot.db, dot.student, { ...given, dose: "20 times, then 10 balls; five days a week" });
  closeDatabases();
  return { folder, student: dot.student.studentId, sister: pip.student.studentId };
}

async function answers(address: string): Promise<void> {
  for (let tries = 0; tries < 120; tries++) {
    const up = await fetch(`${address}/api/health`).then(
      ({ ok }) => ok,
      () => false,
    );
    if (up) return;
    await new Promise((resolve) => setTimeout(resolve, 500));
  }
  throw new Error(`nothing answers at ${address}`);
}

/** Starts the build that is tested on data of its own, with a public address stated. */
export async function startFamilyServer(): Promise<FamilyServer> {
  const { folder, student, sister } = await fill();
  const address = `http://127.0.0.1:${PORT}`;
  // Read in the end with what the other servers wrote, by what is on file here.
  const log = openSync(FAMILY_LOG, "w");
  const next = path.join(served.root, "node_modules", "next", "dist", "bin", "next");
  const child: ChildProcess = spawn(process.execPath, [next, "start", "-H", "127.0.0.1", "-p", String(PORT)], {
    cwd: served.root,
    env: {
      ...process.env,
      ...{ NODE_ENV: "production", PORT: String(PORT), PROOFBAND_DATA: folder, PROOFBAND_ORIGIN: address },
    },
    stdio: ["ignore", log, log],
  });
  closeSync(log);
  await answers(address);
  return {
    ...{ address, student, sister },
    withData(work) {
      const db = openDatabase(path.join(folder, "academy", "proofband.db"));
      try {
        return work(db);
      } finally {
        db.close();
      }
    },
    stop: () =>
      new Promise((resolve) => {
        child.once("exit", () => {
          writeFileSync(FAMILY_WORDS, JSON.stringify(personalWordsIn(path.join(folder, "academy", "proofband.db"))));
          rmSync(folder, { recursive: true, force: true });
          resolve();
        });
        child.kill("SIGTERM");
      }),
  };
}
