import { CLUB_GROUPS, type ClubGroup, isClubGroup } from "@/lib/domain/club-group";
import { clubGroupOf } from "@/lib/domain/club-word";
import { option } from "./import-log";
import { columnOf, groupBy, type ImportContext, isOpen, type RowDraft, setBack } from "./row-draft";
import { argumentWord, questionKey, wordKey } from "./text-key";

const QUESTION_LIMIT = 50;

const groupOptions = () => [
  ...CLUB_GROUPS.map((group) => option(group, { group: argumentWord(group) }, undefined, "club-group")),
  option("leave-out"),
];

/** Finds each row's club group: as written, by the club's name, by the day's other rows, or by one question a word. */
export function settleClubs(rows: readonly RowDraft[], context: ImportContext): void {
  const { log } = context;
  const column = columnOf(context, "clubGroup") ?? columnOf(context, "club");
  const asking: RowDraft[] = [];
  const missing: RowDraft[] = [];
  for (const row of rows.filter(isOpen)) {
    const byClub = row.club === null ? null : clubGroupOf(row.club);
    const byGroup = row.clubGroupText === null ? null : clubGroupOf(row.clubGroupText);
    row.clubGroup = byGroup ?? byClub;
    if (row.clubGroup === null) {
      if (row.club === null && row.clubGroupText === null) missing.push(row);
      else asking.push(row);
    } else if (byGroup === null) {
      log.note(
        "club-group-by-club",
        row.row,
        column?.header,
        { value: row.club ?? "", group: argumentWord(row.clubGroup) },
        row.club ?? "",
      );
    } else if (byClub !== null && byClub !== byGroup) {
      log.note(
        "club-group-kept",
        row.row,
        column?.header,
        { value: row.club ?? "", group: argumentWord(byGroup) },
        row.club ?? "",
      );
    }
  }
  let asked = 0;
  for (const [key, group] of groupBy(asking, (row) => wordKey(row.clubGroupText ?? row.club ?? ""))) {
    const word = group[0]?.clubGroupText ?? group[0]?.club ?? "";
    if (++asked > QUESTION_LIMIT) {
      for (const row of group) {
        log.issue({ code: "unknown-club", row: row.row, column: column?.header, value: word, at: column?.at });
        row.state = "refused";
      }
      continue;
    }
    const answer = log.ask(
      {
        id: `club:${questionKey(key)}`,
        code: "club-unknown",
        args: { value: word },
        options: groupOptions(),
        at: column?.at,
      },
      group.map((row) => row.row),
    );
    take(group, answer?.option ?? null, word);
  }
  settleMissing(missing, take);

  function take(group: readonly RowDraft[], chosen: string | null, word: string): void {
    if (chosen === null) {
      setBack(group, "waiting");
      return;
    }
    for (const row of group) {
      if (isClubGroup(chosen)) {
        row.clubGroup = chosen;
        log.note("club-group-answered", row.row, column?.header, { value: word, group: argumentWord(chosen) }, word);
      } else log.note("left-out", row.row, column?.header, { value: word }, word);
    }
    if (!isClubGroup(chosen)) setBack(group, "left-out");
  }

  function settleMissing(
    blank: readonly RowDraft[],
    answer: (group: readonly RowDraft[], chosen: string | null, word: string) => void,
  ): void {
    if (blank.length === 0) return;
    const days = new Map<string, Set<ClubGroup>>();
    const dayKey = (row: RowDraft) => `${row.alias}\u0000${row.day}\u0000${row.sequence ?? ""}`;
    for (const row of rows) {
      if (row.clubGroup === null || row.day === "") continue;
      days.set(dayKey(row), (days.get(dayKey(row)) ?? new Set()).add(row.clubGroup));
    }
    const rest = blank.filter((row) => {
      const [only, ...more] = days.get(dayKey(row)) ?? [];
      if (row.day === "" || only === undefined || more.length > 0) return true;
      row.clubGroup = only;
      log.note("club-group-by-day", row.row, column?.header, { group: argumentWord(only) }, only);
      return false;
    });
    if (rest.length === 0) return;
    const given = log.ask(
      { id: "club-group", code: "club-group-missing", options: groupOptions(), at: column?.at },
      rest.map((row) => row.row),
    );
    answer(rest, given?.option ?? null, "");
  }
}
