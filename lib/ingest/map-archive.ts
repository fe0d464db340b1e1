import type { Archive, ArchivedRules } from "@/lib/domain/archive";
import type { ClubGroup } from "@/lib/domain/club-group";
import { type ClubGrouping, currentGroups, parseClubGrouping, SHORT_LIST } from "@/lib/domain/club-grouping";
import type { MessageArgs } from "./import-preview";
import { parseOwnFundamental } from "./parse-own-fundamental";
import { type ArchiveIds, renameArchive } from "./rename-archive";
import { nameKey, shownValue } from "./text-key";

/** A question about a thing of the archive's catalogue that means something else here, or may be one of ours by another name. */
export interface CatalogueQuestion {
  /** Under which it is answered. */
  readonly name: string;
  readonly code: "fundamental-differs" | "fundamental-twin" | "drill-differs" | "group-differs" | "group-unknown";
  readonly args: MessageArgs;
  /** `apart`: it is added beside ours; else the id of the one of ours that it is. */
  readonly options: readonly { readonly value: string; readonly name: string }[];
  /** As answered so far; empty or not among the options: it is asked. */
  readonly answer: string;
}

/** Taken in beside what is here. */
export const APART = "apart";

/** What of an academy's catalogue an archive could meet. */
export interface CatalogueHere {
  readonly rules: Pick<ArchivedRules, "ownFundamentals" | "drills">;
  readonly grouping: ClubGrouping;
}

type Answers = ReadonlyMap<string, string>;

const answered = ({ options, answer }: CatalogueQuestion): string | null =>
  options.some(({ value }) => value === answer) ? answer : null;

function ownName(definition: string, id: string): string {
  return parseOwnFundamental(definition)?.ownName ?? id;
}

/** Whether values of two definitions are of one kind: only then one can be taken for the other. */
function sameMeasure(one: string, other: string): boolean {
  const [a, b] = [parseOwnFundamental(one), parseOwnFundamental(other)];
  return a !== null && b !== null && a.unit === b.unit && a.view === b.view && a.mirrors === b.mirrors;
}

function fundamentalQuestions({ rules }: Archive, here: CatalogueHere, answers: Answers): CatalogueQuestion[] {
  const theirs = new Set(rules.ownFundamentals.map(({ id }) => id));
  // One of ours stands for one of theirs alone: two would bring two readings of one swing.
  const spoken = new Set<string>();
  return rules.ownFundamentals.flatMap(({ id, definition }): CatalogueQuestion[] => {
    const same = here.rules.ownFundamentals.find((each) => each.id === id);
    if (same?.definition === definition) return [];
    const name = ownName(definition, id);
    const twins = here.rules.ownFundamentals.filter(
      (each) => each.id === id || nameKey(ownName(each.definition, each.id)) === nameKey(name),
    );
    if (twins.length === 0) return [];
    const ours = twins.filter(
      (each) =>
        sameMeasure(each.definition, definition) && (each.id === id || !theirs.has(each.id)) && !spoken.has(each.id),
    );
    const question = `answer-fundamental:${id}`;
    const answer = answers.get(question) ?? "";
    if (ours.some((each) => each.id === answer)) spoken.add(answer);
    return [
      {
        name: question,
        code: same ? "fundamental-differs" : "fundamental-twin",
        args: { name: shownValue(name), id },
        options: [
          ...ours.map((each) => ({ value: each.id, name: ownName(each.definition, each.id) })),
          { value: APART, name: shownValue(name) },
        ],
        answer,
      },
    ];
  });
}

function drillQuestions({ rules }: Archive, here: CatalogueHere, answers: Answers): CatalogueQuestion[] {
  return rules.drills.flatMap((drill): CatalogueQuestion[] => {
    const isSame = (each: (typeof rules.drills)[number]): boolean =>
      each.name === drill.name &&
      each.fundamentalId === drill.fundamentalId &&
      each.how === drill.how &&
      each.cautions === drill.cautions;
    const twins = here.rules.drills.filter(
      (each) => each.id === drill.id || nameKey(each.name) === nameKey(drill.name),
    );
    if (twins.length === 0 || twins.some((each) => each.id === drill.id && isSame(each))) return [];
    const question = `answer-drill:${drill.id}`;
    return [
      {
        name: question,
        code: "drill-differs",
        args: { name: shownValue(drill.name) },
        options: [
          ...twins.map(({ id, name }) => ({ value: id, name })),
          { value: APART, name: shownValue(drill.name) },
        ],
        answer: answers.get(question) ?? "",
      },
    ];
  });
}

/** The archive's own groups, as it calls them. */
export function archiveGrouping({ rules }: Archive): ClubGrouping {
  const newest = rules.clubGroups.at(-1);
  return newest ? parseClubGrouping(newest.grouping) : SHORT_LIST;
}

/** Groups in which something of a student lies. */
function usedGroups({ rules, students }: Archive): readonly string[] {
  const used = students.flatMap(({ sessions, snapshots, askings, carried, priorities, filmPlans }) => [
    ...sessions.flatMap((session) => [session.saidClubGroup, ...session.looks.map((look) => look.clubGroup)]),
    ...[...snapshots, ...askings, ...carried, ...priorities, ...filmPlans].map(({ clubGroup }) => clubGroup),
  ]);
  const aimed = rules.goalBands.flatMap(({ studentId, clubGroup }) => (studentId === null ? [] : [clubGroup]));
  return [...new Set<string>([...used, ...aimed])];
}

function groupQuestions(archive: Archive, { grouping }: CatalogueHere, answers: Answers): CatalogueQuestion[] {
  const theirs = archiveGrouping(archive);
  return usedGroups(archive).flatMap((id): CatalogueQuestion[] => {
    const [group, same] = [theirs.find((each) => each.id === id), grouping.find((each) => each.id === id)];
    const meaning = (each: typeof group): string => JSON.stringify([each?.name, each?.clubs, each?.state]);
    if (same && (group === undefined || meaning(group) === meaning(same))) return [];
    const offered = [...new Set([...(same ? [same] : []), ...currentGroups(grouping)])];
    const question = `answer-group:${id}`;
    return [
      {
        name: question,
        code: same ? "group-differs" : "group-unknown",
        args: { id, name: shownValue(group?.name ?? id), clubs: (group?.clubs ?? []).join(", ") },
        options: offered.map((each) => ({ value: each.id, name: each.name ?? each.id })),
        answer: answers.get(question) ?? "",
      },
    ];
  });
}

/** An own id like the archive's that neither it nor this academy has. */
function freeId(id: string, taken: ReadonlySet<string>): string {
  for (let number = 2; ; number++) if (!taken.has(`${id}-${number}`)) return `${id}-${number}`;
}

/** Another one of the same name: it is told apart by a number. */
function numbered(name: string): string {
  return `${name.slice(0, 56)} (2)`;
}

function apartFundamental(row: ArchivedRules["ownFundamentals"][number], id: string): string {
  const definition = JSON.parse(row.definition) as { readonly ownName: string };
  return JSON.stringify({ ...definition, id, ownName: numbered(definition.ownName) });
}

/** The archive with its ids as they are to stand here, as far as everything is answered. */
function applied(archive: Archive, here: CatalogueHere, questions: readonly CatalogueQuestion[]): Archive {
  const choices = new Map(questions.map((question) => [question.name, answered(question)]));
  const taken = new Set(
    [...here.rules.ownFundamentals, ...archive.rules.ownFundamentals].map(({ id }) => id as string),
  );
  const fundamentals = new Map<string, string>();
  const own = archive.rules.ownFundamentals.flatMap((row) => {
    const choice = choices.get(`answer-fundamental:${row.id}`);
    if (!choice) return [row];
    const isTaken = here.rules.ownFundamentals.some(({ id }) => id === row.id);
    const id = choice === APART ? (isTaken ? freeId(row.id, taken) : row.id) : choice;
    taken.add(id);
    fundamentals.set(row.id, id);
    return choice === APART ? [{ ...row, id: id as typeof row.id, definition: apartFundamental(row, id) }] : [];
  });
  const drills = new Map<string, string>();
  const ours = new Set(here.rules.drills.map(({ id }) => id));
  const takenDrills = new Set([...ours, ...archive.rules.drills.map(({ id }) => id)]);
  const library = archive.rules.drills.map((row) => {
    const choice = choices.get(`answer-drill:${row.id}`);
    if (!choice) return row;
    // Under our id it would be taken for ours, should another of theirs be that one.
    const id = choice !== APART ? choice : ours.has(row.id) ? freeId(row.id, takenDrills) : row.id;
    takenDrills.add(id);
    drills.set(row.id, id);
    if (choice === APART) return { ...row, id, name: numbered(row.name) };
    return here.rules.drills.find(({ id }) => id === choice) ?? row;
  });
  const groups = new Map(
    questions.flatMap((question): [string, ClubGroup][] => {
      const choice = question.name.startsWith("answer-group:") ? answered(question) : null;
      return choice === null ? [] : [[String(question.args.id), choice as ClubGroup]];
    }),
  );
  const ids: ArchiveIds = { fundamentals, drills, groups };
  const renamed = renameArchive({ ...archive, rules: { ...archive.rules, drills: [] } }, ids);
  const kept = new Set<string>();
  const unique = library.filter(({ id }) => kept.size !== kept.add(id).size);
  const drillsHere = unique.map((row) => ({
    ...row,
    fundamentalId: fundamentals.get(row.fundamentalId) ?? row.fundamentalId,
  }));
  return { ...renamed, rules: { ...renamed.rules, ownFundamentals: own, drills: drillsHere as typeof library } };
}

/**
 * The catalogue of an archive against an academy's. What bears another name or definition is asked about and never guessed:
 * own fundamentals, drills and club groups.
 *
 * @returns the archive as far as it was answered, and every question with its answer so far; `open`: those without one
 */
export function mapArchive(
  archive: Archive,
  here: CatalogueHere,
  answers: Answers,
): { readonly archive: Archive; readonly questions: readonly CatalogueQuestion[]; readonly open: number } {
  const questions = [
    ...fundamentalQuestions(archive, here, answers),
    ...drillQuestions(archive, here, answers),
    ...groupQuestions(archive, here, answers),
  ];
  const open = questions.filter((question) => answered(question) === null).length;
  return { archive: questions.length === 0 ? archive : applied(archive, here, questions), questions, open };
}
