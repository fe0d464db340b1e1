import type { SessionReading } from "@/db/read/session-readings";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import type { Session } from "@/lib/domain/session";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { GridModel } from "@/lib/report/grid-model";
import { layGrid } from "@/lib/report/lay-grid";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";
import { askedOf } from "./session-grid";

/** Rows for swings that were missed, below those on file. */
const SPARE_SWINGS = 2;

/** A value as it stands in a cell: all its digits, so that a cell left alone changes nothing. */
export function shownIn(reading: Pick<SessionReading, "state" | "value"> | undefined): string {
  if (!reading || reading.state === "void") return "";
  return reading.value === null ? "n/m" : String(reading.value);
}

/** What was in sight of a cell, as the form sends it back. */
export function seenOf(reading: Pick<SessionReading, "id" | "correctionId"> | undefined): string {
  return reading ? `${reading.id}:${reading.correctionId}` : "";
}

interface Source {
  readonly session: Session;
  readonly alias: string;
  readonly swings: readonly number[];
  readonly readings: readonly SessionReading[];
  readonly fundamentals: readonly Fundamental[];
  readonly hand: Hand;
  /** Whether single letters are keys within a cell. */
  readonly letters: "on" | "off";
  readonly draft: FormDraft | null;
}

/** Those read in this session first, then all others that can be read. */
function columnsOf({ fundamentals, readings }: Source): readonly Fundamental[] {
  const read = new Set<string>(readings.map((reading) => reading.fundamentalId));
  const all = fundamentals.filter((fundamental) => fundamental.derivedFrom === null);
  return [...all.filter(({ id }) => read.has(id)), ...all.filter(({ id }) => !read.has(id))];
}

function rowNumbers({ swings }: Source): readonly number[] {
  const last = swings.at(-1) ?? 0;
  return [...swings, ...Array.from({ length: SPARE_SWINGS }, (_, at) => last + at + 1)];
}

function buildGrid(words: Words, source: Source): GridModel {
  const { draft, readings } = source;
  const columns = columnsOf(source);
  const typed = new Map(draft?.entries ?? []);
  const read = new Set<string>(readings.map((reading) => reading.fundamentalId));
  const swings = rowNumbers(source);
  return layGrid(words, {
    caption: words.say("correct.grid"),
    explains: "",
    columns,
    first: columns.filter(({ id }) => read.has(id)).length || columns.length,
    rest: "shut",
    hand: source.hand,
    swings,
    shown: swings.length,
    cell(number, fundamental) {
      const name = `r.${number}.${fundamental.id}`;
      const reading = readings.find((each) => each.swing === number && each.fundamentalId === fundamental.id);
      const state = reading === undefined ? "none" : reading.state;
      const value = typed.get(name) ?? shownIn(reading);
      const error = draft?.errors[name] ?? "";
      return {
        name,
        label: words.say("correct.cell", { name: sayFundamental(words, fundamental), number, state }),
        value,
        error,
        // What is on file was asked about when it was saved.
        asked: error === "" ? "no" : askedOf(value, fundamental),
        confirmed: value !== "" && typed.get(`ok.${name}`) === value ? "yes" : "no",
      };
    },
    arrangement: "swings",
    letters: source.letters,
    allRight: typed.get("confirmUnusual") === "yes" ? "yes" : "no",
    sheet: null,
  });
}

/** What was in sight travels with the form; a form that came back keeps what was in sight then. */
function buildHidden(source: Source): FormModel["hidden"] {
  const sent = new Map(source.draft?.entries ?? []);
  return rowNumbers(source).flatMap((number) =>
    columnsOf(source).flatMap((fundamental) => {
      const place = `${number}.${fundamental.id}`;
      const reading = source.readings.find((each) => each.swing === number && each.fundamentalId === fundamental.id);
      if (!reading && !sent.get(`seen.${place}`)) return [];
      return [
        { name: `was.${place}`, value: sent.get(`was.${place}`) ?? shownIn(reading) },
        { name: `seen.${place}`, value: sent.get(`seen.${place}`) ?? seenOf(reading) },
      ];
    }),
  );
}

/** The form that corrects the readings of one session: what is in force stands in its cells, one reason for all changes. */
export function buildCorrectForm(words: Words, source: Source): FormModel {
  const { draft, session } = source;
  const one = (spec: Parameters<typeof field>[3]): FieldModel => field(words, draft, "correct", spec);
  return {
    heading: words.say("correct.heading", { alias: source.alias, day: sayDay(words, session.day, "full") }),
    explains: words.say("correct.explains"),
    parts: [
      {
        margin: words.say("correct.part.why"),
        explains: words.say("correct.part.why.explains"),
        fields: [
          one({ name: "why", kind: "text", required: "yes" }),
          one({
            name: "confirmVoid",
            kind: "checkbox",
            options: [{ value: "yes", label: words.say("correct.confirmVoid.yes") }],
          }),
        ],
      },
    ],
    grid: buildGrid(words, source),
    submit: words.say("correct.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [
      { name: "studentId", value: session.studentId },
      { name: "sessionId", value: session.id },
      ...buildHidden(source),
    ],
  };
}
