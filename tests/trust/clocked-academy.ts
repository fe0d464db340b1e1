import { afterEach, beforeEach, vi } from "vitest";
import { admitMachine, admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { look } from "@/app/_server/keeping/keeper";
import { addStudent } from "@/app/_server/season/student-desk";
import { readNotices } from "@/db/read/keeping";
import { readStudents } from "@/db/read/students";
import { updateDeparted } from "@/db/write/students";
import { type PeopleAcademy, startPeopleAcademy } from "../app/server/people-academy";
import { formOf } from "./own-academy";

// An own academy with two students, Ari and Bo, and a clock that a test sets.

export const HOUR = 3_600_000;
export const START = Date.parse("2031-01-10T12:00:00.000Z");

const STUDENT = { hand: "right", zone: "UTC", consentGivenBy: "Parent", consentOnPaper: "yes" };

let academy: PeopleAcademy;

/** Makes the academy anew before each test of a file, at noon of 10 January 2031. */
export function withClockedAcademy(): void {
  beforeEach(async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: START });
    academy = await startPeopleAcademy();
    for (const alias of ["Ari", "Bo"]) addStudent(await viewer(), formOf({ ...STUDENT, alias }));
  });
  afterEach(() => {
    vi.useRealTimers();
    academy.remove();
  });
}

export function clockedAcademy(): PeopleAcademy {
  return academy;
}

/** The program's own viewer, as it is now. */
export async function viewer(): Promise<Viewer> {
  const found = await admitMachine({ choice: "own", locale: null });
  if (!found) throw new Error("no academy");
  return found;
}

export async function student(alias: string): Promise<StudentViewer> {
  const here = await viewer();
  const found = readStudents(here.db, here.scope).find((each) => each.alias === alias);
  const scope = found ? admitToStudent(here, found.id) : null;
  if (!scope) throw new Error(`${alias} isn't on file`);
  return { ...here, student: scope };
}

/** The machine's clock shows this, and the program looks at it. */
export async function lookAt(iso: string): Promise<void> {
  vi.setSystemTime(Date.parse(iso));
  await look(await viewer());
}

/** Looks once a day from one day to another, both taken in: a machine that is always on. */
export async function runDays(from: string, to: string): Promise<void> {
  for (let at = Date.parse(`${from}T04:00:00.000Z`); at <= Date.parse(`${to}T04:00:00.000Z`); at += 24 * HOUR)
    await lookAt(new Date(at).toISOString());
}

export async function aliases(): Promise<string[]> {
  const { db, scope } = await viewer();
  return readStudents(db, scope).map(({ alias }) => alias);
}

export async function notices() {
  const { db, scope } = await viewer();
  return readNotices(db, scope);
}

/** Notes that a student has left. */
export function depart({ db, student: scope }: StudentViewer, day: string): void {
  updateDeparted(db, scope, day);
}
