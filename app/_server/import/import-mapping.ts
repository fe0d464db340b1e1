import type { Fundamental } from "@/lib/domain/fundamental";
import { columnAnswer, unitAnswer } from "@/lib/ingest/column-choice";
import { FIELDS } from "@/lib/ingest/column-word";
import type { ImportColumn } from "@/lib/ingest/import-preview";
import type { ImportChoice, ImportMapping } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayFundamental } from "@/lib/words/say-fundamental";

/** Columns that are listed; of a wider sheet those that are read come first. */
const LISTED = 60;

/** Sent in place of a unit where a column keeps the one it has. */
export const OWN_UNIT = "own";

function meaningChoice(words: Words, fundamentals: readonly Fundamental[], column: ImportColumn): ImportChoice {
  const measured = fundamentals.filter(({ derivedFrom }) => derivedFrom === null);
  const named = (kind: string) =>
    measured.map((fundamental) => ({ value: `${kind}:${fundamental.id}`, label: sayFundamental(words, fundamental) }));
  return {
    name: `answer:${columnAnswer(column.place)}`,
    label: words.say("import-page.mapping.meaning"),
    value: column.choice,
    groups: [
      { label: "", options: [{ value: "leave-out", label: words.say("import-page.mapping.leave-out") }] },
      { label: words.say("import-page.mapping.fundamentals"), options: named("fundamental") },
      {
        label: words.say("import-page.mapping.fields"),
        options: FIELDS.map((field) => ({ value: `field:${field}`, label: words.say(`import.field.${field}`) })),
      },
      { label: words.say("import-page.mapping.sds"), options: named("sd") },
    ],
  };
}

function unitChoice(words: Words, { place, units, unitChosen, unit, field }: ImportColumn): ImportChoice | null {
  const [own] = units;
  if (own === undefined) return null;
  const each = field === "value";
  const stated = units.find((one) => one === unit && one !== own) ?? null;
  const sayUnit = (one: string) => words.say(`import.unit.${one}`);
  return {
    name: `answer:${unitAnswer(place)}`,
    label: words.say("import-page.mapping.unit"),
    value: unitChosen ?? stated ?? (each ? OWN_UNIT : own),
    groups: [
      {
        label: "",
        options: [
          ...(each ? [{ value: OWN_UNIT, label: words.say("import-page.mapping.unit-each") }] : []),
          ...units.map((one) => ({
            value: one,
            label:
              one === own && !each ? words.say("import-page.mapping.unit-own", { unit: sayUnit(one) }) : sayUnit(one),
          })),
        ],
      },
    ],
  };
}

/** What each column is taken for, with the guess chosen; null: the file has no columns. */
export function buildMapping(
  words: Words,
  fundamentals: readonly Fundamental[],
  columns: readonly ImportColumn[],
): ImportMapping | null {
  if (columns.length === 0) return null;
  const listed = [...columns.filter(({ field }) => field !== null), ...columns.filter(({ field }) => field === null)]
    .slice(0, LISTED)
    .sort((a, b) => a.place - b.place);
  const more = columns.length - listed.length;
  return {
    margin: words.say("import-page.margin.mapping"),
    heading: words.say("import-page.mapping.heading"),
    explains: words.say("import-page.mapping.explains"),
    columns: listed.map((column) => ({
      place: column.place,
      heading:
        column.header.trim() === ""
          ? words.say("import-page.mapping.blank", { place: column.place })
          : words.say("import-page.mapping.column", { place: column.place, header: column.header }),
      sample: column.sample === "" ? "" : words.say("import-page.mapping.sample", { sample: column.sample }),
      meaning: meaningChoice(words, fundamentals, column),
      unit: unitChoice(words, column),
    })),
    more: more > 0 ? words.say("import-page.mapping.more", { count: more }) : "",
    submit: words.say("import-page.mapping.submit"),
  };
}
