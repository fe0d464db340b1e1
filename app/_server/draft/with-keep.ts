import { randomUUID } from "node:crypto";
import { readDraft } from "@/db/read/drafts";
import { readReceipt } from "@/db/read/receipts";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { BothModel, KeepModel, KeepWords } from "@/lib/report/keep-model";
import type { Viewer } from "../gate";
import { DRAFT_FORMS, kindOf } from "./draft-forms";
import { bodyOf, type FormDraft, LEADING } from "./form-draft";
import { findHeld } from "./held-forms";
import { keptAt } from "./kept-at";
import { differencesOf } from "./two-windows";
import { findDropped, loadUnfinished } from "./unfinished";

/** Which form a page shows. */
export interface ShownForm {
  /** One of `DRAFT_FORMS`. */
  readonly form: string;
  /** Empty: about nobody. */
  readonly studentId: string;
  /** The session, draw or other thing that it is for; absent: none. */
  readonly of?: string;
  readonly draftId: string;
  /** The form that was dropped on the way here. */
  readonly dropped?: string;
}

const WORDS = {
  noScript: "draft.no-script",
  unsent: "draft.unsent",
  unsentNothing: "draft.unsent-nothing",
  notSaved: "draft.not-saved",
  found: "draft.found",
  take: "draft.found.take",
  drop: "draft.found.drop",
  changed: "draft.changed",
  seeBoth: "draft.see-both",
  here: "draft.both.here",
  there: "draft.both.there",
  empty: "draft.both.empty",
  field: "draft.both.field",
  choose: "draft.both.choose",
  allHere: "draft.both.all-here",
  allThere: "draft.both.all-there",
  use: "draft.both.use",
  chooseFirst: "draft.choose-first",
  unfinished: "draft.unfinished",
  dropped: "draft.dropped",
  takeBack: "draft.take-back",
  signIn: "draft.sign-in",
} as const satisfies Record<Exclude<keyof KeepWords, "page">, string>;

type Fields = ReadonlyMap<string, Pick<FieldModel, "label" | "options">>;

function allFields(form: FormModel): Fields {
  const fields = form.parts.flatMap((part) => [...part.fields, ...(part.more?.fields ?? [])]);
  const grids = [form.grid, ...form.parts.map((part) => part.grid ?? null)];
  const cells = grids.flatMap(
    (grid) => grid?.rows.flatMap((row) => row.cells.map((cell) => ({ ...cell, options: [] }))) ?? [],
  );
  return new Map([...fields, ...cells].map((field) => [field.name, field]));
}

/** What two windows hold, for a page that is made while it isn't settled. */
function buildBoth(viewer: Viewer, known: Fields, body: FormDraft, updatedAt: string): BothModel | null {
  const other = body.aside?.[0];
  if (!other) return null;
  const { words } = viewer;
  const said = (name: string, values: readonly string[]): string => {
    const options = known.get(name)?.options ?? [];
    const labels = values.map((value) => options.find((option) => option.value === value)?.label ?? value);
    return labels.join(", ") || words.say("draft.both.empty");
  };
  const fields = differencesOf(body.entries, other.entries).map(({ name, here, there }) => ({
    name,
    label: known.get(name)?.label ?? name,
    here: said(name, here),
    there: said(name, there),
    thereValues: there,
  }));
  return {
    said: words.say("draft.changed-elsewhere", { at: keptAt(viewer, other.at) }),
    settles: other.writer,
    here: words.say("draft.both.shown", { at: keptAt(viewer, updatedAt) }),
    there: words.say("draft.both.other", { at: keptAt(viewer, other.at) }),
    fields,
  };
}

function keepWords(viewer: Viewer, page: string): KeepWords {
  const said = Object.fromEntries(
    Object.entries(WORDS).map(([name, key]) => [name, viewer.words.say(key, { at: "{at}" })]),
  ) as unknown as Omit<KeepWords, "page">;
  return { ...said, page };
}

/** How a form stands on the server: kept, saved already, or not begun. */
function standing(viewer: Viewer, { draftId }: ShownForm, updatedAt: string | undefined): string {
  const { words } = viewer;
  if (updatedAt !== undefined) return words.say("draft.kept", { at: keptAt(viewer, updatedAt) });
  const receipt = readReceipt(viewer.db, viewer.scope, draftId);
  if (receipt) return words.say("draft.saved-elsewhere", { at: keptAt(viewer, receipt.savedAt) });
  return words.say("draft.will-keep");
}

/**
 * What leads a form that is kept while somebody types, beside the fields that travel unseen anyway: its id, its version,
 * the window that shows it.
 *
 * @param known its fields by name, for the words of what two windows hold
 */
export function keepOf(
  viewer: Viewer,
  shown: ShownForm,
  hidden: FormModel["hidden"],
  known: Fields,
): { readonly hidden: FormModel["hidden"]; readonly keep: KeepModel } {
  const { form, studentId, of = "", draftId } = shown;
  const kind = kindOf(form, studentId, of);
  const found = readDraft(viewer.db, viewer.scope, draftId);
  const row = found?.kind === kind ? found : undefined;
  const body = row ? bodyOf(row) : null;
  const spec = DRAFT_FORMS[form];
  if (!spec) throw new Error(`no form is kept under ${form}`);
  const isHeld = findHeld(viewer, kind, draftId) !== null;
  const keep: KeepModel = {
    ...{ form, studentId, of, draft: draftId },
    version: row?.version ?? 0,
    writer: randomUUID(),
    said: isHeld ? viewer.words.say("draft.held") : standing(viewer, shown, row?.updatedAt),
    isOnDisk: isHeld ? "no" : "yes",
    leading: LEADING,
    browserKeeps: spec.browserKeeps,
    both: row && body ? buildBoth(viewer, known, body, row.updatedAt) : null,
    unfinished: row ? [] : loadUnfinished(viewer, kind),
    dropped: findDropped(viewer, shown.dropped, kind),
    words: keepWords(viewer, spec.page(studentId, of)),
  };
  const led = [
    { name: "draft", value: keep.draft },
    { name: "version", value: String(keep.version) },
    { name: "writer", value: keep.writer },
    { name: "turn", value: "0" },
    { name: "form", value: keep.form },
    ...(keep.studentId === "" ? [] : [{ name: "studentId", value: keep.studentId }]),
  ];
  return { hidden: [...hidden.filter(({ name }) => !LEADING.includes(name)), ...led], keep };
}

/** A form that is kept while somebody types. */
export function withKeep(viewer: Viewer, form: FormModel, shown: ShownForm): FormModel {
  return { ...form, ...keepOf(viewer, shown, form.hidden, allFields(form)) };
}
