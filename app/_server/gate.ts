import { cookies, headers } from "next/headers";
import { notFound, redirect } from "next/navigation";
import { cache } from "react";
import type { Database } from "@/db/client";
import { type Academy, readAcademy } from "@/db/read/academies";
import { readAssisted, readChargedStudents, readPerson } from "@/db/read/people";
import { readMergedInto, readStudentAcademy } from "@/db/read/students";
import { isVisible } from "@/db/read/visible";
import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { Person, Role } from "@/lib/domain/person";
import { ROLES } from "@/lib/domain/person";
import type { AcademyScope, PainScope, StudentScope } from "@/lib/domain/scope";
import { LOCALES, type Words, wordsFor } from "@/lib/words/catalogue";
import { type LogIn, readLogIn } from "./access/log-in";
import { type ManyRow, noteLooks } from "./access/looks";
import { kindOf, mayPass, type RowOf } from "./access/matrix";
import { mustAddSecondStep } from "./access/second-step";
import { signInPage } from "./access/sign-in-page";
import { todayOf } from "./clock";
import type { AcademyChoice } from "./database";
import { askedLanguage } from "./door/asked-language";
import { checkReached } from "./door/reached";
import { whenWritable } from "./import/write-gate";
import { findWishedAcademy, readWish, type ViewerWish, wishIn } from "./viewer";

/** Who is asking, and what may be shown. */
export interface Viewer {
  /** Whose log-in it is; null: a program's on this machine, which works for the academy as a whole. */
  readonly userId: string | null;
  readonly roles: readonly Role[];
  readonly name: string;
  readonly choice: AcademyChoice;
  readonly db: Database;
  readonly scope: AcademyScope;
  readonly academy: Academy;
  readonly today: CalendarDay;
  readonly words: Words;
  /** When this request’s log-in ends; absent: there is no request. */
  readonly logInEnds?: LogIn["ends"];
}

/** A viewer who may see and change one student's data. */
export interface StudentViewer extends Viewer {
  readonly student: StudentScope;
}

/** Under which a viewer's own preferences are kept. */
export function viewerKey({ userId, name }: Viewer): string {
  return userId ?? name;
}

/** What a request's log-in comes to. */
export type Admission =
  | { readonly kind: "viewer"; readonly viewer: Viewer; readonly logIn: LogIn }
  | { readonly kind: "signed-out"; readonly choice: AcademyChoice }
  | { readonly kind: "no-academy" };

/** An academy as found. */
export interface FoundAcademy {
  readonly db: Database;
  readonly academyId: string;
  readonly choice: AcademyChoice;
}

function wordsWished(wish: ViewerWish, academy: Academy): Words {
  return wordsFor(LOCALES.find((locale) => locale === wish.locale) ?? academy.locale);
}

/**
 * A program on this machine: a command of whoever runs it, or work in the background. It sees the whole academy, and no page
 * is ever made for it.
 */
export async function admitMachine(wish: ViewerWish): Promise<Viewer | null> {
  const found = await findWishedAcademy(wish);
  if (!found) return null;
  const scope = { academyId: found.academyId, userId: null, students: "all" } as unknown as AcademyScope;
  const academy = readAcademy(found.db, scope);
  const { db, choice } = found;
  const [today, words] = [todayOf(academy), wordsWished(wish, academy)];
  return { userId: null, roles: ROLES, name: academy.ownerName, choice, db, scope, academy, today, words };
}

/**
 * The whole academy, for judging and for the roster's list: they rest on everybody's data, and what comes of them is cut to the
 * students whom a viewer may see where it is read.
 */
export function wholeAcademy(scope: AcademyScope): AcademyScope {
  return { ...scope, userId: null, students: "all" };
}

/** The same for a student of it. */
export function scopeForJudging(db: Database, scope: AcademyScope, studentId: string): StudentScope {
  if (readStudentAcademy(db, studentId) !== scope.academyId) throw new Error("a student of another academy");
  return { academyId: scope.academyId, studentId } as StudentScope;
}

function studentsOf(db: Database, { userId, roles }: Person, today: CalendarDay): AcademyScope["students"] {
  if (roles.includes("director")) return "all";
  const coaches = [
    ...(roles.includes("coach") ? [userId] : []),
    ...(roles.includes("assistant") ? readAssisted(db, userId) : []),
  ];
  return coaches.length === 0 ? [] : readChargedStudents(db, coaches, today);
}

/** The viewer that a person of an academy is; null: they are nobody there, or not any more. */
export function admitPerson({ db, academyId, choice }: FoundAcademy, userId: string, wish: ViewerWish): Viewer | null {
  const person = readPerson(db, userId);
  if (!person || person.academyId !== academyId || person.endedAt !== null) return null;
  const bare = { academyId, userId, students: [] } as unknown as AcademyScope;
  const academy = readAcademy(db, bare);
  const today = todayOf(academy);
  const scope: AcademyScope = { ...bare, students: studentsOf(db, person, today) };
  const { roles, name } = person;
  return { userId, roles, name, choice, db, scope, academy, today, words: wordsWished(wish, academy) };
}

/** Somebody's viewer where no request is at hand: in a worker of theirs, or for a key of theirs. */
export async function admitAs(choice: AcademyChoice, userId: string | null): Promise<Viewer | null> {
  const wish = { choice, locale: null };
  if (userId === null) return admitMachine(wish);
  const found = await findWishedAcademy(wish);
  return found?.choice === choice ? admitPerson(found, userId, wish) : null;
}

/** Who sent a request. Also asked at the outermost door, which has no other way to learn it. */
export async function admitRequest(sent: Headers, wish: ViewerWish): Promise<Admission> {
  const found = await findWishedAcademy(wish);
  if (!found) return { kind: "no-academy" };
  const logIn = await readLogIn(found.db, found.choice, sent);
  const viewer = logIn ? admitPerson(found, logIn.userId, wish) : null;
  return logIn && viewer
    ? { kind: "viewer", viewer: { ...viewer, logInEnds: logIn.ends }, logIn }
    : { kind: "signed-out", choice: found.choice };
}

/** The scope of a student whom the viewer may see; null: of another, or of none, which look alike. */
export function admitToStudent(viewer: Viewer, studentId: string): StudentScope | null {
  const academyId = readStudentAcademy(viewer.db, studentId);
  if (academyId !== viewer.scope.academyId) return null;
  const scope = { academyId, studentId } as StudentScope;
  // Whoever turned out to be another is reached through the other.
  const reached = readMergedInto(viewer.db, scope) ?? studentId;
  return isVisible(viewer.scope, studentId) || isVisible(viewer.scope, reached) ? scope : null;
}

/**
 * Proof that the viewer may know what hurts a student; null: they read of a pause its days alone. It is for the coach who has
 * the student in charge today, own or cover, and for the family; a director is told only if they are that coach. A program on
 * this machine works on the very file in which it stands.
 */
export function seesPain(viewer: Viewer, { studentId }: StudentScope): PainScope | null {
  if (viewer.userId === null) return { studentId } as PainScope;
  return seesPainOf(viewer).find((proof) => proof.studentId === studentId) ?? null;
}

/** The same of everybody whom a person has in charge today; a program asks for one student at a time. */
export function seesPainOf({ db, userId, roles, today }: Viewer): readonly PainScope[] {
  if (userId === null || !roles.includes("coach")) return [];
  return readChargedStudents(db, [userId], today).map((studentId) => ({ studentId }) as PainScope);
}

const admission = cache(async (): Promise<Admission> => {
  const reached = await checkReached();
  if (reached.kind !== "ours") notFound();
  return admitRequest(await headers(), wishIn(await cookies()));
});

/** For pages that are there for whoever isn't logged in: at which academy's door they stand. */
export async function findDoor(
  _row: RowOf<"nobody">,
): Promise<{ readonly kind: "door"; readonly choice: AcademyChoice } | { readonly kind: "no-academy" }> {
  const found = await admission();
  if (found.kind === "no-academy") return found;
  return { kind: "door", choice: found.kind === "viewer" ? found.viewer.choice : found.choice };
}

/** The first page of whoever is logged in. */
export function firstPage({ roles }: Viewer): string {
  if (mayPass("/students", roles)) return "/students";
  return mayPass("/record", roles) ? "/record" : "/settings";
}

/** The log-in of this request's viewer, for what is about the log-in itself. */
export async function requireLogIn(row: RowOf<"viewer">): Promise<{ readonly viewer: Viewer; readonly logIn: LogIn }> {
  const viewer = await requireViewer(row);
  const found = await admission();
  if (found.kind !== "viewer") notFound();
  return { viewer, logIn: found.logIn };
}

/** The viewer of this request. Ask before anything is sent: afterwards a refusal can't say 404 any more. */
export async function requireViewer(row: RowOf<"academy" | "viewer" | "student">): Promise<Viewer> {
  const found = await admission();
  if (found.kind === "no-academy") redirect("/start");
  if (found.kind === "signed-out") redirect(signInPage(null));
  if (!mayPass(row, found.viewer.roles)) notFound();
  if (kindOf(row) !== "viewer" && mustAddSecondStep(found.viewer, found.logIn)) redirect("/account/second-step");
  // Only what brings a body would change something: pages go on while an import is written.
  if ((await headers()).get("content-type") !== null) await whenWritable();
  return found.viewer;
}

// A page asks for its title and for itself.
const noteOnce = cache((viewer: Viewer, studentId: string, row: RowOf<"student">): void => {
  noteLooks(viewer, [{ academyId: viewer.scope.academyId, studentId } as StudentScope], row);
});

/** Keeps that a file with records of many students went out: an entry for each whom the viewer may see. */
export function noteLookAtMany(viewer: Viewer, row: ManyRow, studentIds: readonly string[]): void {
  const students = studentIds.flatMap((id) => admitToStudent(viewer, id) ?? []);
  noteLooks(viewer, students, row);
}

/**
 * The viewer of this request and the proof that a student may be seen; else there is no such page. The address of a student
 * who turned out to be another leads to the other. That somebody looked is kept here, where no page can forget it.
 */
export async function requireStudent(row: RowOf<"student">, studentId: string): Promise<StudentViewer> {
  const viewer = await requireViewer(row);
  const student = admitToStudent(viewer, studentId);
  if (!student) notFound();
  const merged = readMergedInto(viewer.db, student);
  if (merged !== null) redirect(`/students/${merged}`);
  noteOnce(viewer, studentId, row);
  return { ...viewer, student };
}

/** The words of this request, also when there is nothing to show. */
export const requireWords = cache(async (): Promise<Words> => {
  const language = await askedLanguage();
  if (language !== null) return wordsFor(language);
  const wish = await readWish();
  try {
    const found = await findWishedAcademy(wish);
    if (!found) return wordsFor(wish.locale ?? "en");
    const scope = { academyId: found.academyId, userId: null, students: [] } as unknown as AcademyScope;
    return wordsWished(wish, readAcademy(found.db, scope));
  } catch {
    return wordsFor(wish.locale ?? "en");
  }
});
