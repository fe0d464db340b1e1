import { describe, expect, it } from "vitest";
import { readProject } from "../../structure/project-files";

/**
 * Tables whose rows say something new of what a student's body or play does. A table that is added and belongs here is missed
 * by this list, so its writer belongs in `RECORDERS` too.
 */
const RECORD =
  "session|capture|swing|reading|practice|event|drillAssignment|drill_assignment|height|readBack|read_back|priorityChoice|drillDecision|drill_decision|fairAllocation|fair_allocation";
const WRITES = new RegExp(
  `\\.insert\\((?:${RECORD}|rereadItem)\\)|INSERT (?:OR \\w+ )?INTO (?:${RECORD}|reread_item)\\b`,
);

/** Writes of `db` that record something new, by name. */
const RECORDERS = [
  ...["insertSession", "insertGroupSessions", "insertPractice", "insertEvent", "insertHeight", "insertAssignment"],
  "insertDrillDecision",
  ...["insertFamilyPractice", "insertGoalBand"],
  ...["insertReadBack", "updateReadBackTyped", "updateReadBackFinished", "insertRereadDraw", "insertSameDraw"],
  ...["insertRereadValues", "insertSessionCorrection", "insertImport", "insertArchive"],
  ...["insertPriority", "insertFilmPlan", "moveSession", "splitSession", "mergeStudents", "insertReadings"],
  "insertFairAllocation",
];

/** What else the files of those writes hold: it takes something back, ends it, or is a step of one of them. */
const NO_RECORDERS: Readonly<Record<string, string>> = {
  prepareSessionStatements: "a step",
  enterSwings: "a step",
  enterCaptures: "a step",
  enterSessionRow: "a step",
  enterArchivedSessions: "a step",
  enterArchivedHappenings: "a step",
  enterArchivedPlans: "a step",
  requireId: "a step",
  placedReadings: "a step",
  enterCarried: "a step of an archive, of looks that were said elsewhere",
  takeInCharge: "says whose the student is",
  updatePracticeVoided: "takes back, or puts back what was on file",
  updateFamilyPracticeVoided: "takes back, or puts back what was on file",
  updatePainFrom: "goes on to the pause that stands in for a wrong one",
  updateEventVoided: "takes back, or puts back what was on file",
  insertRebaseline: "says from which day what is on file is judged",
  insertDrill: "a drill of the library, nobody’s",
  updateDrill: "a drill of the library, nobody’s",
  updateAssignmentEnd: "ends",
  updateAssignmentTakenBack: "takes back, or puts back what was on file",
  updateReadBackDropped: "drops",
  updateDrawFinished: "ends",
  insertReaderError: "of readers, nobody’s",
  updateRevision: "a count",
  insertStudent: "comes with the consent",
  insertConsent: "is the consent",
  nameWithdrawn: "names consents that came withdrawn",
  updateConsentWithdrawn: "is the consent",
  updateLanguage: "says in which language a family is told",
  insertFairTest: "a test of the academy, nobody’s",
  insertFairStep: "what a look found over many",
  updateDeparted: "says that nothing more will come",
};

/** Files that record without asking, and why. */
const EXCUSED: Readonly<Record<string, string>> = {
  "app/_server/import/write-import.ts":
    "its rows were asked about when the file was read (import-desk.ts), in the same call",
  "app/_server/archive/archive-desk.ts":
    "an archive brings what was recorded elsewhere under the consents that come with it; nothing is measured by it",
};

const project = readProject();
const writers = project.filter(({ name, text }) => /^db\/write\//.test(name) && WRITES.test(text));

describe("whatever records something new of a student", () => {
  it("is known by name: a new write beside them is one of them, or says why not", () => {
    const names = writers.flatMap(({ text }) =>
      [...text.matchAll(/^export function (\w+)/gm)].map((found) => found[1]),
    );
    expect(writers.length).toBeGreaterThan(7);
    const known = new Set([...RECORDERS, ...Object.keys(NO_RECORDERS)]);
    expect(names.filter((name) => name === undefined || !known.has(name))).toEqual([]);
  });

  it("asks for a consent in the file that calls it, by the one rule, or is excused", () => {
    const called = new RegExp(`\\b(?:${RECORDERS.join("|")})\\(`);
    const callers = project.filter(({ name, text }) => /^app\//.test(name) && called.test(text));
    expect(callers.length).toBeGreaterThan(8);
    const asks = /from "(?:\.\.\/)+(?:_server\/)?consent\/consent-gate"/;
    const silent = callers.filter(({ name, text }) => !asks.test(text) && !(name in EXCUSED));
    expect(silent.map(({ name }) => name)).toEqual([]);
    const names = new Set(callers.map(({ name }) => name));
    expect(Object.keys(EXCUSED).filter((name) => !names.has(name))).toEqual([]);
  });
});
