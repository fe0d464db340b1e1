import { CIRCUMSTANCES, type Circumstance } from "@/lib/domain/session";
import { option } from "./import-log";
import { columnOf, groupBy, type ImportContext, isOpen, type RowDraft, setBack } from "./row-draft";
import { questionKey, wordKey } from "./text-key";

const QUESTION_LIMIT = 50;

const CIRCUMSTANCE_WORDS: ReadonlyMap<string, Circumstance> = new Map([
  ...["unaided", "no aid", "free", "none"].map((word) => [word, "unaided"] as const),
  ...["aid in view", "aid", "aided", "with aid"].map((word) => [word, "aid-in-view"] as const),
  ...["in lesson", "in a lesson", "lesson", "after practice", "right after practice"].map(
    (word) => [word, "in-lesson"] as const,
  ),
]);

/** Finds under what circumstances each row was filmed; blank is unaided, a word that nobody knows is asked about. */
export function settleCircumstances(rows: readonly RowDraft[], context: ImportContext): void {
  const { log } = context;
  const column = columnOf(context, "circumstance");
  const asking: RowDraft[] = [];
  for (const row of rows.filter(isOpen)) {
    const word = row.circumstanceText;
    row.circumstance = word === null ? null : (CIRCUMSTANCE_WORDS.get(wordKey(word)) ?? null);
    // An aid named and nothing said of the circumstances: the aid was in view.
    if (word === null && row.aid !== null) {
      row.circumstance = "aid-in-view";
      log.note("aid-taken-in-view", row.row, columnOf(context, "aid")?.header, { value: row.aid }, row.aid);
    }
    if (word !== null && row.circumstance === null) asking.push(row);
  }
  let asked = 0;
  for (const [key, group] of groupBy(asking, (row) => wordKey(row.circumstanceText ?? ""))) {
    const word = group[0]?.circumstanceText ?? "";
    if (++asked > QUESTION_LIMIT) {
      for (const row of group) {
        log.issue({ code: "unknown-circumstance", row: row.row, column: column?.header, value: word, at: column?.at });
        row.state = "refused";
      }
      continue;
    }
    const answer = log.ask(
      {
        id: `circumstance:${questionKey(key)}`,
        code: "circumstance-unknown",
        args: { value: word },
        options: [option("unaided"), option("aid-in-view"), option("in-lesson"), option("leave-out")],
        at: column?.at,
      },
      group.map((row) => row.row),
    );
    take(group, answer?.option ?? null, word);
  }
  settleBlank();

  function take(group: readonly RowDraft[], chosen: string | null, word: string): void {
    const circumstance = CIRCUMSTANCES.find((known) => known === chosen);
    for (const row of group) {
      if (circumstance) {
        row.circumstance = circumstance;
        log.note("circumstance-answered", row.row, column?.header, { value: word }, word);
      } else if (chosen !== null) log.note("left-out", row.row, column?.header, { value: word }, word);
    }
    if (!circumstance) setBack(group, chosen === null ? "waiting" : "left-out");
  }

  // Blank means unaided, but not beside rows of the same day that say otherwise: then it may mean "as above".
  function settleBlank(): void {
    const dayKey = (row: RowDraft) => `${row.alias}\u0000${row.day}\u0000${row.sequence ?? ""}`;
    const written = new Map<string, Circumstance>();
    for (const row of rows) {
      if (row.circumstance !== null && row.circumstance !== "unaided" && row.day !== "")
        written.set(dayKey(row), row.circumstance);
    }
    const doubtful: RowDraft[] = [];
    for (const row of rows) {
      if (!isOpen(row) || row.circumstance !== null || row.circumstanceText !== null) continue;
      if (written.has(dayKey(row))) doubtful.push(row);
      else row.circumstance = "unaided";
    }
    if (doubtful.length === 0) return;
    const answer = log.ask(
      {
        id: "circumstance-blank",
        code: "circumstance-blank",
        options: [option("as-others"), option("unaided"), option("leave-out")],
        at: column?.at,
      },
      doubtful.map((row) => row.row),
    );
    if (answer?.option !== "as-others") take(doubtful, answer?.option ?? null, "");
    else
      for (const [other, group] of groupBy(doubtful, (row) => written.get(dayKey(row)) ?? "")) take(group, other, "");
  }
}
