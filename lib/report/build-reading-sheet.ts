import { type Fundamental, VIEWS } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import type { Words } from "@/lib/words/catalogue";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { buildGridColumn } from "./build-grid-column";
import type { ReadingSheet, SheetBlank } from "./sheet-model";

/** Fewest and most swings on one page, and how many there are where nobody chose. */
const SWINGS = { fewest: 5, most: 10, usual: 5 } as const;

/** As many fundamentals as stand side by side on A4 and letter with room to write. Tried out in print. */
export const SHEET_COLUMNS = 8;

/** What a sheet is made of; no value that is on file is among it. */
export interface SheetSource {
  readonly studentId: string;
  readonly alias: string;
  readonly hand: Hand;
  /** Read from stills, those that matter now first. */
  readonly fundamentals: readonly Fundamental[];
  readonly first: readonly string[];
}

/** What was wished for, as it stands in the address. */
export interface SheetWish {
  readonly swings: string | undefined;
  readonly columns: readonly string[];
}

function swingsOf(wish: string | undefined): number {
  const wished = /^\d{1,2}$/.test(wish ?? "") ? Number.parseInt(wish ?? "", 10) : SWINGS.usual;
  return Math.min(SWINGS.most, Math.max(SWINGS.fewest, wished));
}

/** The wished fundamentals that there are; where none is wished those of the form. */
function columnsOf({ fundamentals, first }: SheetSource, wished: readonly string[]): readonly Fundamental[] {
  const chosen = fundamentals.filter((each) => wished.includes(each.id));
  return chosen.length > 0 ? chosen : fundamentals.filter((each) => first.includes(each.id));
}

function address(studentId: string, swings: number, columns: readonly Fundamental[]): string {
  const query = new URLSearchParams([
    ["swings", String(swings)],
    ...columns.map((column) => ["columns", column.id] as [string, string]),
  ]);
  return `/students/${studentId}/sessions/sheet?${query}`;
}

/**
 * The paper sheet of a student's next session: the grid with its drawings, units and signs, and room for when, with what
 * and how it was filmed. It holds nothing that was ever read of the student.
 *
 * @param wish swings beyond 5 to 10 are brought to the nearer end; unknown fundamentals are passed over
 */
export function buildReadingSheet(words: Words, source: SheetSource, wish: SheetWish): ReadingSheet {
  const { studentId, fundamentals, hand } = source;
  const swings = swingsOf(wish.swings);
  const chosen = columnsOf(source, wish.columns);
  const columns = chosen.slice(0, SHEET_COLUMNS);
  const over = chosen.slice(SHEET_COLUMNS);
  const say = (key: string, args = {}): string => words.say(`sheet.${key}`, args);
  const blank = (name: string, width: SheetBlank["width"], boxes: readonly string[] = []): SheetBlank => ({
    label: say(`blank.${name}`),
    width,
    boxes: boxes.map((box) => say(`box.${box}`)),
  });
  return {
    title: say("title", { alias: source.alias }),
    documentTitle: words.say("document-title", { page: say("document-title") }),
    lede: say("lede", { hand: words.say(`hand.${hand}`) }),
    back: { href: `/students/${studentId}/sessions/new`, label: say("back") },
    swings: {
      label: say("swings"),
      links: Array.from({ length: SWINGS.most - SWINGS.fewest + 1 }, (_, i) => SWINGS.fewest + i).map((count) => ({
        href: address(studentId, count, chosen),
        label: say("swings.count", { count }),
        current: count === swings ? "yes" : "no",
      })),
    },
    choose: {
      summary: say("choose"),
      legend: say("choose.legend", { most: SHEET_COLUMNS }),
      swings: String(swings),
      options: fundamentals.map((each) => ({
        value: each.id,
        label: sayFundamental(words, each),
        ticked: columns.includes(each) ? "yes" : "no",
      })),
      submit: say("choose.submit"),
    },
    notice:
      over.length === 0
        ? ""
        : say("too-many", {
            most: SHEET_COLUMNS,
            names: over.map((each) => sayFundamental(words, each)).join(", "),
          }),
    print: say("print"),
    blanks: [
      blank("day", "short"),
      blank("club", "short"),
      blank("circumstance", "long", ["unaided", "aid", "lesson"]),
      blank("reader", "short"),
      blank("contact", "long"),
    ],
    films: VIEWS.filter((view) => columns.some((column) => column.view === view)).map((view) => ({
      view: say("film", { view: words.say(`view.${view}`) }),
      blanks: [
        blank("placed-by", "short"),
        blank("placement", "long", ["same", "anew", "unknown"]),
        blank("square", "short", ["yes", "no"]),
        blank("film", "short"),
      ],
    })),
    swingLabel: words.say("session-form.swing"),
    plusHead: words.say("grid.plus-head"),
    columns: columns.map((column) => buildGridColumn(words, column, hand)),
    rows: Array.from({ length: swings }, (_, i) => String(i + 1)),
    noteLabel: say("note"),
    rules: [say("rule.landmark"), say("rule.blank"), say("rule.not-measurable")],
  };
}
