import { headers } from "next/headers";
import { notFound, redirect } from "next/navigation";
import { cache } from "react";
import type { Database } from "@/db/client";
import { type Academy, readAcademy } from "@/db/read/academies";
import { readMergedInto, readStudentAcademy } from "@/db/read/students";
import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { LOCALES, type Words, wordsFor } from "@/lib/words/catalogue";
import { todayOf } from "./clock";
import type { AcademyChoice } from "./database";
import { checkReached } from "./door/reached";
import { whenWritable } from "./import/write-gate";
import { findWishedAcademy, readWish, type ViewerWish } from "./viewer";

/** Who is asking, and what may be shown. There is one owner, on this machine. */
export interface Viewer {
  readonly role: "owner";
  readonly name: string;
  readonly choice: AcademyChoice;
  readonly db: Database;
  readonly scope: AcademyScope;
  readonly academy: Academy;
  readonly today: CalendarDay;
  readonly words: Words;
}

/** A viewer who may see and change one student's data. */
export interface StudentViewer extends Viewer {
  readonly student: StudentScope;
}

/** The viewer of a wish; null: there is no academy yet. Whoever calls has made sure that the owner is asking. */
export async function admitOwner(wish: ViewerWish): Promise<Viewer | null> {
  const found = await findWishedAcademy(wish);
  if (!found) return null;
  const scope = { academyId: found.academyId } as AcademyScope;
  const academy = readAcademy(found.db, scope);
  const wished = LOCALES.find((locale) => locale === wish.locale);
  return {
    role: "owner",
    name: academy.ownerName,
    choice: found.choice,
    db: found.db,
    scope,
    academy,
    today: todayOf(academy),
    words: wordsFor(wished ?? academy.locale),
  };
}

/** The scope of a student of the viewer's academy; null: of another one, or of none, which look alike. */
export function admitToStudent(viewer: Viewer, studentId: string): StudentScope | null {
  const academyId = readStudentAcademy(viewer.db, studentId);
  if (academyId !== viewer.scope.academyId) return null;
  return { academyId, studentId } as StudentScope;
}

/** The viewer of this request. Ask before anything is sent: afterwards a refusal can't say 404 any more. */
export const requireViewer = cache(async (): Promise<Viewer> => {
  const reached = await checkReached();
  if (reached.kind !== "ours") notFound();
  // Only what brings a body would change something: pages go on while an import is written.
  if ((await headers()).get("content-type") !== null) await whenWritable();
  const viewer = await admitOwner(await readWish());
  if (!viewer) throw new Error("there is no academy in the data folder; npm start makes the demo");
  return viewer;
});

/**
 * The viewer of this request and the proof that a student may be seen; else there is no such page. The address of a student
 * who turned out to be another leads to the other.
 */
export async function requireStudent(studentId: string): Promise<StudentViewer> {
  const viewer = await requireViewer();
  const student = admitToStudent(viewer, studentId);
  if (!student) notFound();
  const merged = readMergedInto(viewer.db, student);
  if (merged !== null) redirect(`/students/${merged}`);
  return { ...viewer, student };
}

/** The words of this request, also when there is nothing to show. */
export const requireWords = cache(async (): Promise<Words> => {
  try {
    return (await requireViewer()).words;
  } catch {
    return wordsFor((await readWish()).locale ?? "en");
  }
});
