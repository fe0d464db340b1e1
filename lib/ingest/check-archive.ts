import type { Archive, ArchivedStudent } from "@/lib/domain/archive";
import { parseTakenPlan } from "@/lib/domain/asking";
import { parseCarried } from "@/lib/domain/carried-look";
import { parseClubGrouping, SHORT_LIST } from "@/lib/domain/club-grouping";
import { parseEarlierDrills } from "@/lib/domain/drill-version";
import { namedInPlan } from "@/lib/domain/film-plan";
import { isOwnId } from "@/lib/domain/fundamental";
import { parseNoiseLine } from "./parse-noise-line";
import { parseOwnFundamental } from "./parse-own-fundamental";
import { hasRefusedMarks } from "./text-key";

/** What is wrong with an archive: where, as a path of fields and places, and a code that words are kept for. */
export interface ArchiveIssue {
  readonly where: string;
  readonly code: string;
}

function holds(work: () => unknown): boolean {
  try {
    work();
    return true;
  } catch {
    return false;
  }
}

function isZone(zone: string): boolean {
  return holds(() => new Intl.DateTimeFormat("en", { timeZone: zone }));
}

/** Whether a text is JSON of anything. */
function isJson(text: string): boolean {
  return holds(() => JSON.parse(text));
}

function isNoiseModel(name: string, pool: string, body: string): boolean {
  if (!isJson(body)) return false;
  const model = JSON.parse(body) as unknown;
  if (typeof model !== "object" || model === null) return false;
  return parseNoiseLine(JSON.stringify({ ...model, noiseModel: name, pool })).kind === "ok";
}

/** The first text that comes twice; undefined: each comes once. */
function doubled(texts: readonly string[]): string | undefined {
  const seen = new Set<string>();
  return texts.find((text) => seen.size === seen.add(text).size);
}

class Issues {
  readonly found: ArchiveIssue[] = [];

  add(where: string, code: string): void {
    this.found.push({ where, code });
  }

  once(texts: readonly string[], where: string): void {
    if (doubled(texts) !== undefined) this.add(where, "doubled");
  }
}

function checkRules(issues: Issues, { rules }: Archive): void {
  if (!isZone(rules.zone)) issues.add("rules.zone", "not-zone");
  rules.ownFundamentals.forEach((own, at) => {
    if (parseOwnFundamental(own.definition)?.id !== own.id)
      issues.add(`rules.ownFundamentals[${at}]`, "not-definition");
  });
  issues.once(
    rules.ownFundamentals.map((own) => own.id),
    "rules.ownFundamentals",
  );
  rules.clubGroups.forEach((row, at) => {
    if (!holds(() => parseClubGrouping(row.grouping))) issues.add(`rules.clubGroups[${at}]`, "not-grouping");
  });
  issues.once(
    rules.clubGroups.map((row) => String(row.number)),
    "rules.clubGroups",
  );
  rules.noiseModels.forEach(({ name, pool, body }, at) => {
    if (!isNoiseModel(name, pool, body)) issues.add(`rules.noiseModels[${at}]`, "not-noise");
  });
  issues.once(
    rules.noiseModels.map((model) => model.name),
    "rules.noiseModels",
  );
  issues.once(
    rules.noiseModels.map(({ pool, number }) => JSON.stringify([pool, number])),
    "rules.noiseModels",
  );
  issues.once(
    rules.readerErrors.map(({ fundamentalId, number }) => `${fundamentalId} ${number}`),
    "rules.readerErrors",
  );
  rules.drills.forEach(({ earlier }, at) => {
    if (!holds(() => parseEarlierDrills(earlier))) issues.add(`rules.drills[${at}]`, "not-earlier");
  });
  issues.once(
    rules.drills.map((drill) => drill.id),
    "rules.drills",
  );
  issues.once(
    rules.goalBands.map((band) => band.id),
    "rules.goalBands",
  );
  rules.goalBands.forEach(({ low, high, scope, studentId }, at) => {
    if (low !== null && high !== null && low >= high) issues.add(`rules.goalBands[${at}]`, "edges");
    if ((scope === "student") !== (studentId !== null)) issues.add(`rules.goalBands[${at}]`, "scope");
  });
  rules.noteCodings.forEach(({ coding }, at) => {
    if (!isJson(coding)) issues.add(`rules.noteCodings[${at}]`, "not-json");
  });
}

interface Known {
  readonly own: ReadonlySet<string>;
  readonly groups: ReadonlySet<string>;
  readonly models: ReadonlySet<string>;
  readonly drills: ReadonlySet<string>;
}

function checkSessions(issues: Issues, student: ArchivedStudent, where: string, known: Known): void {
  issues.once(
    student.sessions.map(({ saidClubGroup, day, sequence }) => `${saidClubGroup} ${day} ${sequence}`),
    `${where}.sessions`,
  );
  student.sessions.forEach((session, at) => {
    const here = `${where}.sessions[${at}]`;
    if (!known.groups.has(session.saidClubGroup)) issues.add(here, "unknown-group");
    if (session.solid !== null && session.balls !== null && session.solid > session.balls)
      issues.add(`${here}.solid`, "more-solid");
    issues.once(
      session.captures.map(({ view }) => view),
      `${here}.captures`,
    );
    issues.once(
      session.statedCaptureSds.map(({ fundamentalId }) => fundamentalId),
      `${here}.statedCaptureSds`,
    );
    issues.once(
      session.swings.map((swing) => String(swing.number)),
      `${here}.swings`,
    );
    issues.once(
      session.looks.map((look) => `${look.fundamentalId} ${look.clubGroup}`),
      `${here}.looks`,
    );
    for (const { noiseModelName } of session.looks)
      if (!known.models.has(noiseModelName)) issues.add(`${here}.looks`, "unknown-noise");
    session.swings.forEach(({ readings }, place) => {
      issues.once(
        readings.map(({ fundamentalId, reader, reread }) => JSON.stringify([fundamentalId, reader, reread])),
        `${here}.swings[${place}].readings`,
      );
      for (const { fundamentalId } of readings)
        if (isOwnId(fundamentalId) && !known.own.has(fundamentalId))
          issues.add(`${here}.swings[${place}].readings`, "unknown-fundamental");
    });
  });
}

/** Looks of a third academy: figures and words of fixed lists alone, each after a session of the archive. */
function checkCarried(issues: Issues, { carried, sessions }: ArchivedStudent, where: string, known: Known): void {
  const days = new Map(sessions.map(({ id, day }) => [id, day]));
  issues.once(
    carried.map(({ sessionId, fundamentalId, clubGroup }) => JSON.stringify([sessionId, fundamentalId, clubGroup])),
    `${where}.carried`,
  );
  carried.forEach(({ sessionId, fundamentalId, saidBy, body }, at) => {
    const here = `${where}.carried[${at}]`;
    if (!days.has(sessionId)) issues.add(here, "unknown-session");
    if (isOwnId(fundamentalId) && !known.own.has(fundamentalId)) issues.add(here, "unknown-fundamental");
    if (hasRefusedMarks(saidBy)) issues.add(`${here}.saidBy`, "hidden-mark");
    const look = parseCarried(body);
    if (look === null) issues.add(`${here}.body`, "not-look");
    else if (look.date !== days.get(sessionId)) issues.add(`${here}.body`, "other-day");
  });
}

function checkStudent(issues: Issues, student: ArchivedStudent, where: string, known: Known): void {
  if (!isZone(student.zone)) issues.add(`${where}.zone`, "not-zone");
  checkSessions(issues, student, where, known);
  issues.once(
    student.heights.map(({ day }) => day),
    `${where}.heights`,
  );
  const given = new Set(student.assignments.map(({ id }) => id));
  for (const { drillId } of student.assignments)
    if (!known.drills.has(drillId)) issues.add(`${where}.assignments`, "unknown-drill");
  for (const { assignmentId, minutes, balls, pain } of student.practice) {
    if (assignmentId !== null && !given.has(assignmentId)) issues.add(`${where}.practice`, "unknown-assignment");
    // A family may say of a day that something hurts, and nothing else.
    if (minutes === null && balls === null && pain === null) issues.add(`${where}.practice`, "no-dose");
  }
  for (const { plan } of student.askings)
    if (plan !== null && !holds(() => parseTakenPlan(plan))) issues.add(`${where}.askings`, "not-plan");
  for (const { body } of student.filmPlans) {
    if (!isJson(body)) issues.add(`${where}.filmPlans`, "not-json");
    if (namedInPlan(body).some((id) => isOwnId(id) && !known.own.has(id)))
      issues.add(`${where}.filmPlans`, "unknown-fundamental");
  }
  for (const { body } of student.snapshots) if (!isJson(body)) issues.add(`${where}.snapshots`, "not-json");
  checkCarried(issues, student, where, known);
  const swings = swingsOf(student);
  for (const { items } of student.readBacks)
    for (const { sessionId, swing } of items)
      if (!swings.has(`${sessionId} ${swing}`)) issues.add(`${where}.readBacks`, "unknown-swing");
}

function swingsOf({ sessions }: ArchivedStudent): Set<string> {
  return new Set(sessions.flatMap(({ id, swings }) => swings.map(({ number }) => `${id} ${number}`)));
}

/** Everything that isn't right in an archive whose single fields are: names that point at nothing, and things that come twice. */
export function checkArchive(archive: Archive): ArchiveIssue[] {
  const issues = new Issues();
  const { rules, students, rereads } = archive;
  checkRules(issues, archive);
  if (issues.found.length > 0) return issues.found;
  const newest = rules.clubGroups.at(-1);
  const grouping = newest ? parseClubGrouping(newest.grouping) : SHORT_LIST;
  const known: Known = {
    own: new Set(rules.ownFundamentals.map(({ id }) => id)),
    groups: new Set(grouping.map(({ id }) => id)),
    models: new Set(rules.noiseModels.map(({ name }) => name)),
    drills: new Set(rules.drills.map(({ id }) => id)),
  };
  if (students.length === 0) issues.add("students", "nobody");
  issues.once(
    students.map(({ id }) => id),
    "students",
  );
  issues.once(
    students.map(({ alias }) => alias),
    "students",
  );
  issues.once(
    students.flatMap(({ sessions }) => sessions.map(({ id }) => id)),
    "students.sessions",
  );
  for (const [at, student] of students.entries()) checkStudent(issues, student, `students[${at}]`, known);
  const ids = new Set(students.map(({ id }) => id));
  for (const { studentId } of rules.goalBands)
    if (studentId !== null && !ids.has(studentId)) issues.add("rules.goalBands", "unknown-student");
  const swings = new Map(students.map((student) => [student.id, swingsOf(student)]));
  for (const { items } of rereads)
    for (const { studentId, sessionId, swing } of items)
      if (!swings.get(studentId)?.has(`${sessionId} ${swing}`)) issues.add("rereads", "unknown-swing");
  return issues.found;
}
