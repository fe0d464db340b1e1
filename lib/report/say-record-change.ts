import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { ColumnValue, RecordChange, RowState } from "@/lib/domain/record-change";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayNumber } from "@/lib/words/number-words";
import { sayClubGroup } from "@/lib/words/say-club";

/** What a change is said with. */
export interface ChangeNames {
  readonly grouping: ClubGrouping;
  /** Aliases by id of those whom the viewer may see, of those who were merged too. */
  readonly aliases: ReadonlyMap<string, string>;
}

/** Columns that follow from others or say nothing to a reader. */
const UNSAID = new Set(["sequence", "club_group", "batch_id"]);

function sayValue(words: Words, names: ChangeNames, column: string, value: ColumnValue | undefined): string {
  if (value === null || value === undefined || value === "") return words.say("change.value.none");
  if (column === "day") return sayDay(words, String(value), "full");
  if (column === "said_club_group")
    return sayClubGroup(words, names.grouping, String(value) as Parameters<typeof sayClubGroup>[2]);
  if (column === "circumstance") return words.say(`circumstance.${value}`);
  if (column === "placement" || column === "squareness") return words.say(`${column}.${value}`);
  return typeof value === "number" ? sayNumber(words, value, Number.isInteger(value) ? 0 : 1) : value;
}

/** What a row's columns are called: those of a film with its view. */
function sayColumn(words: Words, state: RowState, column: string): string {
  const name = words.say(`change.column.${column}`);
  return state.table === "capture"
    ? words.say("change.column.of-film", { name, view: words.say(`view.${state.key.view}`) })
    : name;
}

/** What session facts were and became, one a line. */
function factLines(words: Words, change: RecordChange, names: ChangeNames): readonly { from: string; to: string }[] {
  return change.after.flatMap((after, at) => {
    // Readings go with the reader of their session, which is said.
    if (after.table === "reading") return [];
    const before = change.before[at]?.values ?? {};
    return Object.entries(after.values ?? {}).flatMap(([column, value]) => {
      if (UNSAID.has(column) || (before[column] ?? null) === value) return [];
      const name = sayColumn(words, after, column);
      const one = (text: string) => words.say("change.fact", { name, text });
      return [
        { from: one(sayValue(words, names, column, before[column])), to: one(sayValue(words, names, column, value)) },
      ];
    });
  });
}

/** A change of the record in words: what it was, how it stood before and after. */
export function sayRecordChange(
  words: Words,
  change: RecordChange,
  names: ChangeNames,
): { readonly what: string; readonly from: string; readonly to: string } {
  // Whom the viewer may not see has no name in their pages.
  const alias = (id: string | null): string => names.aliases.get(id ?? "") ?? words.say("change.someone");
  const what = words.say(`change.kind.${change.kind}`);
  const [mine, other] = [alias(change.studentId), alias(change.otherStudentId ?? change.studentId)];
  if (change.kind === "session-facts") {
    const lines = factLines(words, change, names);
    return { what, from: lines.map((line) => line.from).join("; "), to: lines.map((line) => line.to).join("; ") };
  }
  if (change.kind === "split-session") {
    const swings = change.after.filter((state) => state.table === "swing").length;
    const made = change.after.find((state) => state.table === "session")?.values?.day;
    const day = typeof made === "string" ? sayDay(words, made, "full") : "";
    return { what, from: mine, to: words.say("change.split.to", { swings, day, alias: other }) };
  }
  const turned = change.after.some((state) => state.table === "reading" && "value" in (state.values ?? {}));
  return { what, from: mine, to: words.say("change.moved.to", { alias: other, turned: turned ? "yes" : "no" }) };
}
