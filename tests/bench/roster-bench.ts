import { existsSync, mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { addDemoPeople, DEMO_PASSWORD, DEMO_PEOPLE } from "@/app/_server/access/demo-people";
import { closeDatabases, databaseFile, ensurePrivateFolder } from "@/app/_server/database";
import { admitMachine, scopeForJudging, type Viewer } from "@/app/_server/gate";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { loadRosterCsv } from "@/app/_server/roster/load-roster-csv";
import { loadRules } from "@/app/_server/roster/load-verdicts";
import { insertHeight } from "@/db/write/students";
import { fillWeeksAcademy } from "@/seed/weeks-academy";
import { multiplyStudents } from "./many-students";
import { type Measured, measureLater } from "./measured";
import { servedFigures } from "./served-bench";

/** Weeks of films of the students who are copied: a whole term. */
const WEEKS = 20;

/** What is asked of the roster, as an address says it: the first page, one far behind, a filter, a search. */
const ASKED = [
  "sort=work",
  "sort=work&page=30",
  "place=outside&fundamental=hinge&sort=last",
  "q=kely&sort=name",
] as const;

async function viewerOf(): Promise<Viewer> {
  const viewer = await admitMachine({ choice: "demo", locale: null });
  if (viewer === null) throw new Error("the bench academy isn't there");
  return viewer;
}

async function build(students: number): Promise<string> {
  const file = databaseFile("demo");
  if (existsSync(file)) return "as it was left";
  ensurePrivateFolder(path.dirname(file));
  await fillWeeksAcademy(file, WEEKS);
  const viewer = await viewerOf();
  await addDemoPeople(viewer);
  await loadRules(viewer);
  closeDatabases();
  const made = multiplyStudents(file, students);
  return `${made.students} students, ${made.tracks} tracks`;
}

/** The nineteenth of twenty: what one view in twenty takes longer than. */
const VIEWS = { times: 20, unmeasured: 2 } as const;

/** What the roster takes at so many students: its model in this process, then whole from the built server. */
export async function rosterFigures(students: number, kept: string | undefined): Promise<readonly Measured[]> {
  const folder = kept ?? mkdtempSync(path.join(os.tmpdir(), "proofband-roster-"));
  process.env.PROOFBAND_DATA = folder;
  const at = `at ${students.toLocaleString("en")} students`;
  try {
    const figures: Measured[] = [];
    let made = "";
    const once = { times: 1, unmeasured: 0 };
    figures.push(
      await measureLater(
        `a judged academy of ${students} students made`,
        once,
        () => made,
        async () => {
          made = await build(students);
        },
      ),
    );
    const viewer = await viewerOf();
    const none = (): string => "";
    const view = (query: string) => () => loadRoster(viewer, Object.fromEntries(new URLSearchParams(query)));
    figures.push(await measureLater(`the first view of a process, ${at}`, once, none, view(ASKED[0])));
    for (const query of ASKED)
      figures.push(await measureLater(`roster's model ?${query} ${at}`, VIEWS, none, view(query)));
    figures.push(
      await measureLater(`roster's file ${at}`, { times: 3, unmeasured: 1 }, none, () => loadRosterCsv(viewer, {})),
      await measureLater(
        `the next view after one student's change ${at}`,
        { times: 3, unmeasured: 0 },
        none,
        async (round) => {
          insertHeight(viewer.db, scopeForJudging(viewer.db, viewer.scope, "s07"), {
            day: `2026-07-0${round + 1}`,
            cm: 150,
          });
          await view(ASKED[0])();
        },
      ),
    );
    closeDatabases();
    const { email } = DEMO_PEOPLE[0] ?? { email: "" };
    const pages = ASKED.map((query) => `/students?${query}`);
    return [...figures, ...(await servedFigures(pages, at, { email, password: DEMO_PASSWORD }))];
  } finally {
    closeDatabases();
    if (kept === undefined) rmSync(folder, { recursive: true, force: true });
  }
}
