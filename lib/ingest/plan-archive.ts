import type { Archive, ArchivedRules, ArchivedStudent } from "@/lib/domain/archive";
import type { ArchivePlan } from "@/lib/domain/archive-plan";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import { carryLooks } from "./carry-looks";
import type { MessageArgs } from "./import-preview";
import { archiveGrouping, type CatalogueQuestion, mapArchive } from "./map-archive";
import { hasRefusedMarks } from "./text-key";

/** As a form has it, in characters. */
const LONGEST_ALIAS = 60;

/** What an academy has on file that an archive could meet. */
export interface AcademyOnFile {
  readonly students: readonly { readonly id: string; readonly alias: string }[];
  readonly rules: ArchivedRules;
  readonly grouping: ClubGrouping;
  /** Ids of its sessions, as far as whoever imports may see them. */
  readonly sessions: readonly string[];
  /** Students of the academy whom whoever imports may not see. */
  readonly others: number;
}

/** Something that is asked, refused or not taken over, with a code that words are kept for. */
export interface ArchiveNote {
  readonly code: string;
  readonly args: MessageArgs;
}

/** An archive against an academy: what would be written, and what stands in its way. */
export interface ArchivePreview {
  /** Null while something is asked or refused. */
  readonly plan: ArchivePlan | null;
  /** Students whose alias is taken here, with the alias that was answered so far. */
  readonly aliases: readonly { readonly studentId: string; readonly alias: string; readonly answer: string }[];
  /** Things of the catalogue that are asked about, answered or not. */
  readonly questions: readonly CatalogueQuestion[];
  /** What can't be taken over into this academy; nothing is written. */
  readonly refusals: readonly ArchiveNote[];
  /** What is taken over otherwise than it was; everything else is taken over as it was. */
  readonly differences: readonly ArchiveNote[];
  readonly students: readonly {
    readonly studentId: string;
    readonly alias: string;
    readonly sessions: number;
    readonly swings: number;
    readonly readings: number;
    readonly events: number;
    readonly firstDay: string;
    readonly lastDay: string;
  }[];
}

/** The name of the answer that gives a student another alias. */
export function aliasAnswer(studentId: string): string {
  return `answer-alias:${studentId}`;
}

type Answers = ReadonlyMap<string, string>;

function nameStudents(archive: Archive, onFile: AcademyOnFile, answers: Answers) {
  const here = new Set(onFile.students.map(({ alias }) => alias));
  const taken = new Set([...here, ...archive.students.map(({ alias }) => alias)]);
  const aliases: { studentId: string; alias: string; answer: string }[] = [];
  let open = 0;
  const students = archive.students.map((student) => {
    if (!here.has(student.alias)) return student;
    const answer = (answers.get(aliasAnswer(student.id)) ?? "").normalize("NFC").trim();
    aliases.push({ studentId: student.id, alias: student.alias, answer });
    if (answer === "" || answer.length > LONGEST_ALIAS || taken.has(answer) || hasRefusedMarks(answer)) open += 1;
    taken.add(answer);
    return { ...student, alias: answer };
  });
  return { students, aliases, open };
}

function refusalsOf(archive: Archive, onFile: AcademyOnFile): ArchiveNote[] {
  const here = new Map(onFile.students.map(({ id, alias }) => [id, alias]));
  return archive.students
    .filter(({ id }) => here.has(id))
    .map(({ id, alias }) => ({ code: "student-here", args: { alias, here: here.get(id) ?? "" } }));
}

function isEmpty({ students, others }: AcademyOnFile): boolean {
  return students.length === 0 && others === 0;
}

// Groups that are set up after the first session move sessions of others.
function takesGroups(archive: Archive, onFile: AcademyOnFile): boolean {
  return isEmpty(onFile) && onFile.rules.clubGroups.length === 0 && archive.rules.clubGroups.length > 0;
}

/** Whether a model was learned from nobody. */
function isStart(body: string): boolean {
  return (JSON.parse(body) as { readonly kind?: unknown }).kind === "start";
}

/**
 * Models that an empty academy takes over, and the names that mean the same model in both. One with students judges by its own
 * noise: only looks that it said itself, by a model learned here that stands here word for word, keep theirs. That it did is
 * told by sessions of the archive that are on file here (their student was merged since): a name anybody can write into a
 * file, and start models are alike in every academy.
 */
function planNoise(archive: Archive, onFile: AcademyOnFile) {
  const pools = new Set(onFile.rules.noiseModels.map(({ pool }) => pool));
  const bodies = new Map(onFile.rules.noiseModels.map(({ name, body }) => [name, body]));
  const fresh = isEmpty(onFile)
    ? archive.rules.noiseModels.filter(({ pool, name }) => !pools.has(pool) && !bodies.has(name))
    : [];
  const here = new Set(onFile.sessions);
  const isOurs = archive.students.some(({ sessions }) => sessions.some(({ id }) => here.has(id)));
  const same = archive.rules.noiseModels.filter(
    ({ name, body }) => bodies.get(name) === body && (isEmpty(onFile) || (isOurs && !isStart(body))),
  );
  return { fresh, known: new Set([...fresh, ...same].map(({ name }) => name)) };
}

/** A name with marks that scramble what is shown is none. */
function nameOf(saidBy: string): string {
  return hasRefusedMarks(saidBy) ? "" : saidBy;
}

/** The students with the looks whose noise model stands here too; others are kept as they were said, and said anew. */
function tieLooks({ saidBy, students }: Archive, known: ReadonlySet<string>, among: ArchivePlan["among"]) {
  let [loose, carries] = [0, 0];
  const by = nameOf(saidBy);
  const tied = students.map((student) => {
    const carried =
      among === "others" ? carryLooks(student, by, (look) => known.has(look.noiseModelName)) : student.carried;
    carries += carried.length;
    const held = new Set(
      carried.map(({ sessionId, fundamentalId, clubGroup }) => [sessionId, fundamentalId, clubGroup].join(" ")),
    );
    const sessions = student.sessions.map((session) => {
      const looks = session.looks.filter((look) => known.has(look.noiseModelName));
      loose += session.looks.filter(
        (look) => !looks.includes(look) && !held.has([session.id, look.fundamentalId, look.clubGroup].join(" ")),
      ).length;
      return { ...session, looks };
    });
    return { ...student, sessions, carried: [...carried] };
  });
  return { tied, loose, carries };
}

function sameRow(a: object, b: object): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function planRules(archive: Archive, onFile: AcademyOnFile) {
  const { rules } = archive;
  const empty = isEmpty(onFile);
  const differences: ArchiveNote[] = [];
  /** Everybody's rules: taken over by an academy that has neither students nor such rules. */
  const take = <T extends object>(code: string, wanted: readonly T[], here: readonly T[]): T[] => {
    if (empty && here.length === 0) return [...wanted];
    const missing = wanted.filter((row) => !here.some((each) => sameRow(each, row)));
    if (missing.length > 0) differences.push({ code, args: { count: missing.length } });
    return [];
  };
  const common = (bands: ArchivedRules["goalBands"]) => bands.filter((band) => band.studentId === null);
  const own = rules.ownFundamentals.filter(({ id }) => !onFile.rules.ownFundamentals.some((each) => each.id === id));
  if (!takesGroups(archive, onFile) && !sameRow(archiveGrouping(archive), onFile.grouping))
    differences.push({ code: "club-groups", args: {} });
  const seasonUnset = empty && onFile.rules.seasonStart === SINCE_EVER;
  if (!seasonUnset && rules.seasonStart !== onFile.rules.seasonStart)
    differences.push({ code: "season", args: { theirs: rules.seasonStart, ours: onFile.rules.seasonStart } });
  return {
    differences,
    seasonStart: seasonUnset && rules.seasonStart !== SINCE_EVER ? rules.seasonStart : null,
    rules: {
      ownFundamentals: own,
      clubGroups: takesGroups(archive, onFile) ? rules.clubGroups : [],
      drills: rules.drills,
      goalBands: [
        ...take("goal-bands", common(rules.goalBands), common(onFile.rules.goalBands)),
        ...rules.goalBands.filter((band) => band.studentId !== null),
      ],
      owningRules: take("owning-rules", rules.owningRules, onFile.rules.owningRules),
      readerErrors: take("reader-errors", rules.readerErrors, onFile.rules.readerErrors),
      noteCodings: take("note-codings", rules.noteCodings, onFile.rules.noteCodings),
    },
  };
}

function countStudent({ id: studentId, alias, sessions, events }: ArchivedStudent): ArchivePreview["students"][number] {
  const swings = sessions.flatMap((session) => session.swings);
  return {
    studentId,
    alias,
    sessions: sessions.length,
    swings: swings.length,
    readings: swings.reduce((sum, swing) => sum + swing.readings.length, 0),
    events: events.length,
    firstDay: sessions[0]?.day ?? "",
    lastDay: sessions.at(-1)?.day ?? "",
  };
}

/**
 * What an archive would write into an academy. An empty academy takes everything over as it was. One with students keeps its
 * own rules: what differs from the archive's is listed, and what can't be taken over refuses the whole.
 *
 * @param source name of the file, and digest of the archive's one text
 * @param answers other aliases, by `aliasAnswer`, and those to `questions`, by their names
 */
export function planArchive(
  brought: Archive,
  onFile: AcademyOnFile,
  source: { readonly fileName: string; readonly contentHash: string },
  answers: Answers,
): ArchivePreview {
  // Groups that are taken over mean here what they meant there; fundamentals and drills may be ours by another definition.
  const grouping = takesGroups(brought, onFile) ? archiveGrouping(brought) : onFile.grouping;
  const mapped = mapArchive(brought, { ...onFile, grouping }, answers);
  const { archive, questions } = mapped;
  const { students, aliases, open } = nameStudents(archive, onFile, answers);
  const among = isEmpty(onFile) ? "nobody" : "others";
  const refusals = refusalsOf(archive, onFile);
  const { fresh, known } = planNoise(archive, onFile);
  const { tied, loose, carries } = tieLooks({ ...archive, students }, known, among);
  const { differences, seasonStart, rules } = planRules(archive, onFile);
  if (among === "others" && carries > 0)
    differences.push({
      code: "carried",
      args: { count: carries, by: nameOf(archive.saidBy), named: nameOf(archive.saidBy) === "" ? "no" : "yes" },
    });
  // By whom an archive was written is only a word in it: even one that bears this academy's name is asked for consent anew.
  const consents = students.reduce((sum, student) => sum + student.consents.length, 0);
  if (among === "others" && consents > 0) differences.push({ code: "consents", args: { count: consents } });
  if (loose > 0) differences.push({ code: "looks", args: { count: loose } });
  if (archive.holds === "student" || !isEmpty(onFile)) differences.push({ code: "roster-list", args: {} });
  const plan = {
    ...source,
    seasonStart,
    rules: { ...rules, noiseModels: fresh },
    students: tied,
    rereads: archive.rereads,
    among,
  } as const;
  return {
    plan: open + mapped.open > 0 || refusals.length > 0 ? null : plan,
    aliases,
    questions,
    refusals,
    differences,
    students: students.map(countStudent),
  };
}
