import type { Archive, ArchivedRules, ArchivedStudent } from "@/lib/domain/archive";
import type { ArchivePlan } from "@/lib/domain/archive-plan";
import { type ClubGrouping, parseClubGrouping, SHORT_LIST } from "@/lib/domain/club-grouping";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import type { MessageArgs } from "./import-preview";
import { hasRefusedMarks } from "./text-key";

/** As a form has it, in characters. */
const LONGEST_ALIAS = 60;

/** What an academy has on file that an archive could meet. */
export interface AcademyOnFile {
  readonly students: readonly { readonly id: string; readonly alias: string }[];
  readonly rules: ArchivedRules;
  readonly grouping: ClubGrouping;
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
  /** What can't be taken over into this academy; nothing is written. */
  readonly refusals: readonly ArchiveNote[];
  /** What is taken over otherwise than it was; everything else is taken over as it was. */
  readonly differences: readonly ArchiveNote[];
  readonly students: readonly {
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
  const own = new Map(onFile.rules.ownFundamentals.map(({ id, definition }) => [id, definition]));
  const groups = new Set((takesGroups(archive, onFile) ? groupingOf(archive) : onFile.grouping).map(({ id }) => id));
  const unknown = new Set(
    archive.students
      .flatMap(({ sessions }) => sessions.map((session) => session.saidClubGroup))
      .filter((group) => !(groups as ReadonlySet<string>).has(group)),
  );
  return [
    ...archive.students
      .filter(({ id }) => here.has(id))
      .map(({ id, alias }) => ({ code: "student-here", args: { alias, here: here.get(id) ?? "" } })),
    ...archive.rules.ownFundamentals
      .filter(({ id, definition }) => own.has(id) && own.get(id) !== definition)
      .map(({ id }) => ({ code: "fundamental-differs", args: { id } })),
    ...[...unknown].map((group) => ({ code: "group-unknown", args: { id: group } })),
  ];
}

function groupingOf(archive: Archive): ClubGrouping {
  const newest = archive.rules.clubGroups.at(-1);
  return newest ? parseClubGrouping(newest.grouping) : SHORT_LIST;
}

function isEmpty({ students }: AcademyOnFile): boolean {
  return students.length === 0;
}

// Groups that are set up after the first session move sessions of others.
function takesGroups(archive: Archive, onFile: AcademyOnFile): boolean {
  return isEmpty(onFile) && onFile.rules.clubGroups.length === 0 && archive.rules.clubGroups.length > 0;
}

/** Models of pools that are new here, and the names that mean the same model in both. */
function planNoise(archive: Archive, onFile: AcademyOnFile) {
  const pools = new Set(onFile.rules.noiseModels.map(({ pool }) => pool));
  const bodies = new Map(onFile.rules.noiseModels.map(({ name, body }) => [name, body]));
  const fresh = archive.rules.noiseModels.filter(({ pool, name }) => !pools.has(pool) && !bodies.has(name));
  const same = archive.rules.noiseModels.filter(({ name, body }) => bodies.get(name) === body);
  return { fresh, known: new Set([...fresh, ...same].map(({ name }) => name)) };
}

/** The students with the looks whose noise model stands here too; the others are said anew with this academy's noise. */
function tieLooks(students: readonly ArchivedStudent[], known: ReadonlySet<string>) {
  let loose = 0;
  const tied = students.map((student) => ({
    ...student,
    sessions: student.sessions.map((session) => {
      const looks = session.looks.filter((look) => known.has(look.noiseModelName));
      loose += session.looks.length - looks.length;
      return { ...session, looks };
    }),
  }));
  return { tied, loose };
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
  if (!takesGroups(archive, onFile) && !sameRow(groupingOf(archive), onFile.grouping))
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
      readerErrors: take("reader-errors", rules.readerErrors, onFile.rules.readerErrors),
      noteCodings: take("note-codings", rules.noteCodings, onFile.rules.noteCodings),
    },
  };
}

function countStudent({ alias, sessions, events }: ArchivedStudent): ArchivePreview["students"][number] {
  const swings = sessions.flatMap((session) => session.swings);
  return {
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
 * @param answers other aliases, by `aliasAnswer`
 */
export function planArchive(
  archive: Archive,
  onFile: AcademyOnFile,
  source: { readonly fileName: string; readonly contentHash: string },
  answers: Answers,
): ArchivePreview {
  const { students, aliases, open } = nameStudents(archive, onFile, answers);
  const refusals = refusalsOf(archive, onFile);
  const { fresh, known } = planNoise(archive, onFile);
  const { tied, loose } = tieLooks(students, known);
  const { differences, seasonStart, rules } = planRules(archive, onFile);
  if (loose > 0) differences.push({ code: "looks", args: { count: loose } });
  if (archive.holds === "student" || !isEmpty(onFile)) differences.push({ code: "roster-list", args: {} });
  const plan = {
    ...source,
    seasonStart,
    rules: { ...rules, noiseModels: fresh },
    students: tied,
    rereads: archive.rereads,
  };
  return {
    plan: open > 0 || refusals.length > 0 ? null : plan,
    aliases,
    refusals,
    differences,
    students: students.map(countStudent),
  };
}
