import { type FiledConsent, readAcademyConsents, readConsents, readStudent, readStudents } from "@/db/read/students";
import { type ConsentAsked, type ConsentKind, type ConsentStanding, consentStanding } from "@/lib/domain/consent";
import type { StudentScope } from "@/lib/domain/scope";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { Viewer } from "../gate";

/** Of whom a consent is asked today. */
export function askedToday(
  { today, academy }: Pick<Viewer, "today" | "academy">,
  { birthYear }: { readonly birthYear: number | null },
): ConsentAsked {
  return { day: today, birthYear, ownConsentAge: academy.ownConsentAge };
}

/** Where a student's consent stands today; the one question that is asked before anything new is recorded or shared. */
export function standingOf(
  viewer: Pick<Viewer, "db" | "today" | "academy">,
  student: StudentScope,
  kind: ConsentKind,
): ConsentStanding {
  const { db } = viewer;
  return consentStanding(readConsents(db, student), kind, askedToday(viewer, readStudent(db, student)));
}

/** The same of every student whom the viewer may see, by id. */
export function standingsOf(viewer: Viewer, kind: ConsentKind): ReadonlyMap<string, ConsentStanding> {
  const { db, scope } = viewer;
  const byStudent = new Map<string, FiledConsent[]>();
  for (const consent of readAcademyConsents(db, scope))
    byStudent.set(consent.studentId, [...(byStudent.get(consent.studentId) ?? []), consent]);
  return new Map(
    readStudents(db, scope).map((student) => [
      student.id,
      consentStanding(byStudent.get(student.id) ?? [], kind, askedToday(viewer, student)),
    ]),
  );
}

/** Why nothing new may be recorded of a student today, and what to do about it; null: it may. */
export function whyNotRecorded(
  viewer: Pick<Viewer, "db" | "today" | "academy" | "words">,
  student: StudentScope,
): string | null {
  const standing = standingOf(viewer, student, "measure");
  return standing.kind === "given" ? null : sayNotRecorded(viewer.words, standing);
}

/** The same said above a form before anything is typed into it; null: there is nothing to say. */
export function warnBeforehand(
  viewer: Pick<Viewer, "db" | "today" | "academy" | "words">,
  student: StudentScope,
): string | null {
  const { words } = viewer;
  const standing = standingOf(viewer, student, "measure");
  if (standing.kind === "given") return null;
  return `${words.say(`consent.why.${standing.kind}`, { day: dayIn(words, standing) })} ${words.say("consent.beforehand")}`;
}

/** Why nothing new is recorded, in words. */
export function sayNotRecorded(words: Words, standing: Exclude<ConsentStanding, { kind: "given" }>): string {
  const why = words.say(`consent.why.${standing.kind}`, { day: dayIn(words, standing) });
  return `${why} ${words.say("consent.refused")}`;
}

function dayIn(words: Words, standing: ConsentStanding): string {
  if (standing.kind === "not-yet") return sayDay(words, standing.from, "full");
  return "since" in standing ? sayDay(words, standing.since, "full") : "";
}
