import { mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { hashPassword } from "better-auth/crypto";
import { closeDatabases, databaseFile } from "@/app/_server/database";
import { admitMachine, admitToStudent, type Viewer } from "@/app/_server/gate";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { loadRules } from "@/app/_server/roster/load-verdicts";
import { loadFundamental } from "@/app/_server/season/load-fundamental";
import { loadSeason } from "@/app/_server/season/load-season";
import { insertAccount, insertPerson } from "@/db/write/people";
import { fillBigAcademy } from "./big-academy";
import { type Measured, measureLater } from "./measured";
import { type Account, servedFigures } from "./served-bench";

const STUDENT = "s1003";
const ACCOUNT: Account = { email: "bench@demo.example", password: "a bench beside the first tee" };

/** Somebody who may see all of it, so that the served pages are those of a log-in. */
async function enterDirector({ db, academy }: Viewer): Promise<void> {
  const passwordHash = await hashPassword(ACCOUNT.password);
  const now = new Date();
  insertAccount(db, { userId: "bench", name: "Bench", email: ACCOUNT.email, passwordHash, now });
  const person = { userId: "bench", academyId: academy.id, roles: ["director", "coach"], assists: [] } as const;
  insertPerson(db, { ...person, addedAt: now.toISOString(), addedBy: "Bench" });
}

async function viewerOf(): Promise<Viewer> {
  const viewer = await admitMachine({ choice: "demo", locale: null });
  if (viewer === null) throw new Error("the bench academy isn't there");
  return viewer;
}

/** What the pages take on a database of so many readings: their models in this process, then whole from the built server. */
export async function pageFigures(readings: number): Promise<readonly Measured[]> {
  const folder = mkdtempSync(path.join(os.tmpdir(), "proofband-bench-"));
  process.env.PROOFBAND_DATA = folder;
  try {
    const filled = await fillBigAcademy(databaseFile("demo"), readings);
    const viewer = await viewerOf();
    await enterDirector(viewer);
    const nothing = (): string => "";
    const judged = await measureLater(
      `judging ${filled.students} students x 10 tracks for the first time`,
      { times: 1, unmeasured: 0 },
      (ms) =>
        `${(ms / (filled.students * 10)).toFixed(1)} ms a track, ${filled.readings.toLocaleString("en")} readings`,
      () => loadRules(viewer),
    );
    const pages: readonly (readonly [string, () => Promise<unknown>])[] = [
      ["roster", () => loadRoster(viewer, { sort: undefined, page: undefined })],
      ["season", () => loadSeason(studentOf(viewer), undefined)],
      ["fundamental", () => loadFundamental(studentOf(viewer), "hinge", undefined)],
    ];
    const figures = [judged];
    for (const [name, load] of pages)
      figures.push(
        await measureLater(
          `${name} page's model at ${filled.readings} readings`,
          { times: 9, unmeasured: 1 },
          nothing,
          load,
        ),
      );
    closeDatabases();
    const addresses = ["/students", `/students/${STUDENT}`, `/students/${STUDENT}/hinge`];
    return [...figures, ...(await servedFigures(addresses, `at ${filled.readings} readings`, ACCOUNT))];
  } finally {
    closeDatabases();
    rmSync(folder, { recursive: true, force: true });
  }
}

function studentOf(viewer: Viewer) {
  const student = admitToStudent(viewer, STUDENT);
  if (student === null) throw new Error("the bench student isn't there");
  return { ...viewer, student };
}
