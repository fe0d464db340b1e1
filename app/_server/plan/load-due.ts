import { readPromisedFilms } from "@/db/read/film-plans";
import { readPauses } from "@/db/read/pauses";
import { readSaidPainDays } from "@/db/read/practice";
import { readLatestClubs } from "@/db/read/sessions";
import { readStudents } from "@/db/read/students";
import { buildDuePage, type DuePage, type DueSource } from "@/lib/report/build-due";
import { byStudent } from "@/lib/report/by-student";
import { workStop } from "@/lib/verdict/work-stop";
import { familyWords } from "@/lib/words/family-words";
import { linkTables } from "../archive/table-links";
import { daysHere } from "../clock";
import { standingsOf } from "../consent/consent-gate";
import { loadDrillsDue } from "../drill/load-drills-due";
import { seesPainOf, type Viewer } from "../gate";
import { loadAcademyRules } from "../season/student-record";
import { sayClubAsked } from "./say-club-asked";

/**
 * Films that were promised and haven't come, of the students whom the viewer may see. Nobody is reminded while practice rests,
 * for a pause or, as far as the viewer may know it, for what was said to hurt, or where no consent to measure is in force.
 */
export function loadDue(viewer: Viewer): DueSource {
  const { db, scope, academy, today, words } = viewer;
  const { fundamentals, grouping } = loadAcademyRules(db, scope, academy);
  const promises = readPromisedFilms(db, scope, today);
  // Of those alone who promised one, and of all of them at once.
  const promising = { ...viewer, scope: { ...scope, students: [...new Set(promises.map((each) => each.studentId))] } };
  const students = new Map(readStudents(db, promising.scope).map((student) => [student.id, student]));
  const pains = byStudent(readSaidPainDays(db, seesPainOf(viewer)));
  const pauses = byStudent(readPauses(db, promising.scope, today));
  const consents = standingsOf(promising, "measure");
  const clubs = new Map(
    readLatestClubs(db, promising.scope).map((each) => [`${each.studentId} ${each.clubGroup}`, each.club]),
  );
  const films = promises.flatMap(({ clubGroup, ...promised }) => {
    const { studentId } = promised;
    const student = students.get(studentId);
    const events = (pauses.get(studentId) ?? []).map((pause) => ({ ...pause, kind: "pause" as const }));
    const isStopped = workStop({ said: pains.get(studentId) ?? [], events }, today) !== null;
    if (student === undefined || isStopped || consents.get(studentId)?.kind !== "given") return [];
    const { alias, hand } = student;
    const family = familyWords(words, student);
    const club = clubs.get(`${studentId} ${clubGroup}`) ?? null;
    return [{ ...promised, clubGroup, alias, hand, family, club: sayClubAsked(family, { grouping, clubGroup, club }) }];
  });
  return { films, fundamentals, today, dayOf: daysHere(academy) };
}

/** The list of what is due. */
export function loadDuePage(viewer: Viewer): DuePage {
  const drills = loadDrillsDue(viewer);
  const page = { ...buildDuePage(viewer.words, loadDue(viewer)), drills: drills.table === null ? null : drills };
  return linkTables(viewer.words, "due", {}, page);
}
