import type { ArchivedRules, ArchivedStudent } from "./archive";
import { readCountKey } from "./count-key";
import { namedInPlan } from "./film-plan";

function foldText(text: string): string {
  return text.toLowerCase().replace(/[’‘`]/g, "'").replace(/\s+/g, " ");
}

/** Whether a coding is of a phrase of these notes; of one session's note only where that session is among them. */
function isOfNotes(phrase: string, notes: string, sessions: ReadonlySet<string>): boolean {
  const key = readCountKey(phrase);
  if (key === null) return notes.includes(foldText(phrase));
  return key.scope === "note" ? sessions.has(key.sessionId) : notes.includes(foldText(key.words));
}

function fundamentalsOf(students: readonly ArchivedStudent[], bands: ArchivedRules["goalBands"]): Set<string> {
  const ids = new Set<string>(bands.map((band) => band.fundamentalId));
  for (const { sessions, assignments, askings, priorities, events, readBacks, filmPlans } of students) {
    for (const { fundamentalId } of [...assignments, ...askings, ...priorities, ...readBacks])
      if (fundamentalId !== null) ids.add(fundamentalId);
    for (const { body } of filmPlans) for (const id of namedInPlan(body)) ids.add(id);
    for (const { rebaselines } of events) for (const one of rebaselines.split(",")) ids.add(one);
    for (const { swings } of sessions)
      for (const { readings } of swings) for (const { fundamentalId } of readings) ids.add(fundamentalId);
  }
  return ids;
}

function notesOf(students: readonly ArchivedStudent[]): string {
  return students
    .flatMap(({ sessions }) => sessions.flatMap(({ note, swings }) => [note, ...swings.map((swing) => swing.note)]))
    .map((note) => foldText(note ?? ""))
    .join("\n");
}

/**
 * The rules of an academy that some of its students need for the same pages, without a word about others: their own goal
 * bands and those of everybody, the drills that they were given, the noise models of their pools, every measured error of
 * the readers, the club groups as they are now without who changed them and why, and the codings of phrases in their notes.
 *
 * @param rules all rules of the academy
 * @param students the students of the archive
 */
export function selectArchiveRules(rules: ArchivedRules, students: readonly ArchivedStudent[]): ArchivedRules {
  const mine = new Set(students.map((student) => student.id));
  const goalBands = rules.goalBands.filter((band) => band.studentId === null || mine.has(band.studentId));
  const used = fundamentalsOf(students, goalBands);
  const given = new Set(students.flatMap(({ assignments }) => assignments.map(({ drillId }) => drillId)));
  const named = new Set(
    students.flatMap(({ sessions }) => sessions.flatMap(({ looks }) => looks.map((look) => look.noiseModelName))),
  );
  const pools = new Set(rules.noiseModels.filter((model) => named.has(model.name)).map((model) => model.pool));
  const notes = notesOf(students);
  const sessions = new Set(students.flatMap((student) => student.sessions.map((session) => session.id)));
  return {
    ...rules,
    ownFundamentals: rules.ownFundamentals.filter((own) => used.has(own.id)),
    clubGroups: rules.clubGroups.slice(-1).map((newest) => ({ ...newest, who: "", why: "", sessions: 0 })),
    drills: rules.drills.filter((drill) => given.has(drill.id)),
    goalBands,
    noiseModels: rules.noiseModels.filter((model) => pools.has(model.pool)),
    noteCodings: rules.noteCodings.filter(({ phrase }) => isOfNotes(phrase, notes, sessions)),
  };
}
