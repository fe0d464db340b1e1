import type { ClubGrouping } from "@/lib/domain/club-grouping";
import { VIEWS } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import { notFilmedField } from "@/lib/ingest/parse-capture-form";
import { groupName, ownName } from "@/lib/ingest/parse-group-form";
import type { CaptureAnswer } from "@/lib/report/capture-answer-model";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { GridModel } from "@/lib/report/grid-model";
import type { NoteAnswer } from "@/lib/report/note-answer-model";
import type { Words } from "@/lib/words/catalogue";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";
import type { GroupGrid } from "./group-grids";
import { filmParts, whenFields } from "./session-fields";
import { buildSessionGrid } from "./session-grid";

/** A student as the group's form names one. */
export interface NamedStudent {
  readonly id: string;
  readonly alias: string;
  readonly hand: Hand;
}

/** What the form of a group session rests on. */
export interface GroupFormSource {
  /** With consent, in the order of the aliases. */
  readonly students: readonly NamedStudent[];
  /** Chosen, but without consent. */
  readonly without: readonly NamedStudent[];
  /** The grid of each student. */
  readonly grids: ReadonlyMap<string, GroupGrid>;
  /** Ids of the columns that were chosen; none: what matters now. */
  readonly columns: readonly string[];
  readonly grouping: ClubGrouping;
  readonly clubGroup: string;
  readonly today: string;
  readonly swings: number;
  readonly draft: FormDraft | null;
  /** What a student's note says of strikes, as the form stands. */
  readonly noteOf: (studentId: string) => NoteAnswer;
  readonly answers: readonly CaptureAnswer[];
}

/** The form of a group session: one occasion with its film check, and a grid for each student. It shows no earlier value. */
export function buildGroupForm(words: Words, source: GroupFormSource): FormModel {
  const { draft, students, without } = source;
  const one = (spec: Parameters<typeof field>[3]): FieldModel => field(words, draft, "session-form", spec);
  const all = [...students, ...without].map((student) => student.id).join(",");
  return {
    heading: words.say("group-form.heading", { students: students.length }),
    explains: words.say("session-form.explains"),
    parts: [
      ...(without.length === 0 ? [] : [withoutPart(words, without, one)]),
      {
        margin: words.say("session-form.part.when"),
        explains: words.say("group-form.when.explains"),
        fields: whenFields(words, source, one),
        refresh: words.say("session-form.columns"),
      },
      ...filmParts(words, source, one),
      ...students.map((student) => studentPart(words, source, student)),
    ],
    grid: null,
    submit: words.say("group-form.submit", { students: students.length }),
    check: words.say("capture.check"),
    noteCheck: words.say("note.check"),
    refusal: draft?.refusal ?? "",
    hidden: [
      { name: "students", value: all },
      { name: "swings", value: String(source.swings) },
      { name: "columns", value: source.columns.join(",") },
    ],
  };
}

/** Who was chosen without a consent, and the box by which they are left out. */
function withoutPart(
  words: Words,
  without: readonly NamedStudent[],
  one: (spec: Parameters<typeof field>[3]) => FieldModel,
): FormModel["parts"][number] {
  const names = without.map((student) => student.alias).join(", ");
  return {
    margin: words.say("group-form.consent"),
    explains: words.say("group-form.consent.explains"),
    fields: [
      one({
        name: "leaveOut",
        kind: "checkbox",
        label: words.say("group-form.leaveOut", { names, students: without.length }),
        options: [{ value: "yes", label: words.say("group-form.leaveOut.yes", { names }) }],
      }),
    ],
  };
}

/** The fields that stand once for each student, and the grid. */
function studentPart(
  words: Words,
  { draft, grids, swings, noteOf }: GroupFormSource,
  student: NamedStudent,
): FormModel["parts"][number] {
  const own = (name: string, kind: FieldModel["kind"]): FieldModel => {
    const label = `${words.say(`session-form.${name}`)}, ${student.alias}`;
    return field(words, draft, "group-form", { name: groupName(student.id, name), kind, label });
  };
  const grid = grids.get(student.id);
  if (!grid) throw new Error(`no grid for the student ${student.id}`);
  const isMarked = [...grids.values()].some((each) => each.own.length < grid.source.first.length);
  return {
    margin: student.alias,
    explains: "",
    note: noteOf(student.id),
    grid: prefixed(
      words,
      buildSessionGrid(words, grid.source, draftOf(draft, student.id)),
      { ...student, own: isMarked ? grid.own : [] },
      swings,
    ),
    fields: [
      own("solid", "number"),
      own("balls", "number"),
      own("daysSincePractice", "number"),
      own("note", "textarea"),
      field(words, draft, "group-form", {
        name: groupName(student.id, "absent"),
        kind: "checkbox",
        label: words.say("group-form.absent", { alias: student.alias }),
        options: [{ value: "yes", label: words.say("group-form.absent.yes") }],
      }),
    ],
  };
}

/** What is said of the views for all, and tells the columns of each. */
const NOT_FILMED: readonly string[] = VIEWS.map(notFilmedField);

/** A draft as the form of one student would have kept it. */
function draftOf(draft: FormDraft | null, studentId: string): FormDraft | null {
  if (draft === null) return null;
  const own = <T>(list: readonly (readonly [string, T])[]): (readonly [string, T])[] =>
    list.flatMap(([name, value]) => {
      const named = ownName(studentId, name);
      return named === null ? [] : [[named, value] as const];
    });
  const shared = draft.entries.filter(([name]) => NOT_FILMED.includes(name));
  return {
    ...draft,
    entries: [...shared, ...own(draft.entries)],
    errors: Object.fromEntries(own(Object.entries(draft.errors))),
  };
}

/** A grid as one of several on a page: names and labels say whose it is. */
function prefixed(
  words: Words,
  grid: GridModel,
  { id, alias, own }: NamedStudent & { readonly own: readonly string[] },
  swings: number,
): GridModel {
  const whose = (label: string): string => words.say("group-form.whose", { alias, label });
  return {
    ...grid,
    margin: whose(grid.margin),
    caption: whose(grid.caption),
    columns: grid.columns.map((column) =>
      own.includes(column.fundamentalId) ? { ...column, mark: words.say("group-form.own", { alias }) } : column,
    ),
    rest: grid.rest && { ...grid.rest, summary: whose(grid.rest.summary), caption: whose(grid.rest.caption) },
    shown: swings,
    sheet: null,
    // A box for all would speak for the other students, too.
    allRight: null,
    rows: grid.rows.slice(0, swings).map((row) => ({
      ...row,
      cells: row.cells.map((cell) => ({ ...cell, name: groupName(id, cell.name), label: whose(cell.label) })),
    })),
  };
}
