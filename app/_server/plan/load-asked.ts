import { readFilmPlans } from "@/db/read/film-plans";
import { readReadingsInForce } from "@/db/read/readings";
import { readCaptures, readSessions } from "@/db/read/sessions";
import { askedInVain, planAnswers } from "@/lib/verdict/plan-answers";
import type { StudentViewer } from "../gate";
import { loadAcademyRules } from "../season/student-record";
import { loadSentFilms } from "./sent-films";

/** How often a film of each fundamental was asked for in a row and has not come, by id; empty: nothing was ever asked for. */
export function loadAsked(viewer: StudentViewer): ReadonlyMap<string, number> {
  const { db, student } = viewer;
  const plans = readFilmPlans(db, student);
  if (plans.length === 0) return new Map();
  const { fundamentals } = loadAcademyRules(db, viewer.scope, viewer.academy);
  const films = loadSentFilms(viewer, {
    sessions: readSessions(db, student),
    captures: readCaptures(db, student),
    readings: readReadingsInForce(db, student),
    fundamentals,
  });
  return askedInVain(fundamentals, planAnswers(plans, films));
}
