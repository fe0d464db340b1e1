import type { Fundamental } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import { notFilmedField } from "@/lib/ingest/parse-capture-form";
import { parseCell } from "@/lib/ingest/parse-cell";
import { isUnusual } from "@/lib/ingest/parse-session-form";
import type { Arrangement, GridModel } from "@/lib/report/grid-model";
import { layGrid } from "@/lib/report/lay-grid";
import type { Words } from "@/lib/words/catalogue";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { FormDraft } from "../draft/form-draft";

/** Swings that the grid takes. */
export const GRID_SWINGS = 10;

/** Swings that it shows at first: as many as one usually films. */
const USUAL_SWINGS = 5;

/** What the grid of a student's session is made of; no value that is on file is among it. */
export interface GridSource {
  readonly studentId: string;
  readonly fundamentals: readonly Fundamental[];
  /** Ids of those that stand first, and whether the rest is open from the start. */
  readonly first: readonly string[];
  readonly rest: "open" | "shut";
  readonly hand: Hand;
  readonly arrangement: Arrangement;
  readonly letters: "on" | "off";
}

/** The fundamentals read from stills: the first ones, then the rest in the order of work. */
export function gridFundamentals(
  fundamentals: readonly Fundamental[],
  first: readonly string[],
): readonly Fundamental[] {
  const read = fundamentals.filter((fundamental) => fundamental.derivedFrom === null);
  const leading = first.flatMap((id) => read.find((fundamental) => fundamental.id === id) ?? []);
  return [...leading, ...read.filter((fundamental) => !leading.includes(fundamental))];
}

/** Whether a cell holds a value that is unusual in anyone. */
export function askedOf(typed: string, fundamental: Fundamental): "yes" | "no" {
  const parsed = parseCell(typed);
  return parsed.kind === "number" && isUnusual(parsed.value, fundamental) ? "yes" : "no";
}

/**
 * Without the columns of views that a form says were not filmed. A column that holds a value stays, so that nothing that was
 * typed is out of sight; and where neither view was filmed they all stay, for there is nothing to save.
 */
function filmedColumns(columns: readonly Fundamental[], typed: ReadonlyMap<string, string>): readonly Fundamental[] {
  const holds = ({ id }: Fundamental): boolean =>
    [...typed].some(([name, value]) => value !== "" && name.startsWith("r.") && name.endsWith(`.${id}`));
  const filmed = columns.filter((column) => typed.get(notFilmedField(column.view)) !== "yes" || holds(column));
  return filmed.length === 0 ? columns : filmed;
}

/** The grid of a session's form: the first columns, the rest, and what was typed in a kept form. */
export function buildSessionGrid(words: Words, source: GridSource, draft: FormDraft | null): GridModel {
  const { first, hand, arrangement, letters } = source;
  const typed = new Map(draft?.entries ?? []);
  const columns = filmedColumns(gridFundamentals(source.fundamentals, first), typed);
  const leading = columns.filter((column) => first.includes(column.id)).length;
  return layGrid(words, {
    caption: words.say(leading < columns.length ? "grid.caption.first" : "session-form.grid"),
    explains: words.say("grid.explains"),
    columns,
    first: leading,
    rest: source.rest,
    hand,
    swings: Array.from({ length: GRID_SWINGS }, (_, row) => row + 1),
    shown: USUAL_SWINGS,
    cell(number, fundamental) {
      const name = `r.${number}.${fundamental.id}`;
      const value = typed.get(name) ?? "";
      return {
        name,
        label: words.say("session-form.cell", { name: sayFundamental(words, fundamental), number }),
        value,
        error: draft?.errors[name] ?? "",
        asked: askedOf(value, fundamental),
        confirmed: value !== "" && typed.get(`ok.${name}`) === value ? "yes" : "no",
      };
    },
    arrangement,
    letters,
    allRight: typed.get("confirmUnusual") === "yes" ? "yes" : "no",
    sheet: { href: `/students/${source.studentId}/sessions/sheet`, label: words.say("grid.sheet") },
  });
}
