import type { ClubGroup } from "@/lib/domain/club-group";
import { type ClubGrouping, currentGroups, groupNow, saidGroup } from "@/lib/domain/club-grouping";
import { clubKindOfWord } from "@/lib/domain/club-word";
import { option } from "./import-log";
import { columnOf, groupBy, type ImportContext, isOpen, type RowDraft, setBack } from "./row-draft";
import { questionKey, wordKey } from "./text-key";

const QUESTION_LIMIT = 50;

const groupOptions = (grouping: ClubGrouping) => [
  ...currentGroups(grouping).map(({ id }) => option(id, { group: id }, undefined, "club-group")),
  option("leave-out"),
];

/** The group that a word names: a group in use by the academy's own name for it, or a kind of clubs. */
function groupOfWord(grouping: ClubGrouping, word: string): ClubGroup | null {
  const own = currentGroups(grouping).find(({ name }) => name !== null && wordKey(name) === wordKey(word));
  return own?.id ?? clubKindOfWord(word);
}

/** Finds each row's club group: as written, by the club's name, by the day's other rows, or by one question a word. */
export function settleClubs(rows: readonly RowDraft[], context: ImportContext): void {
  const { log } = context;
  const { grouping } = context.input;
  const inForce = (said: ClubGroup, club: string | null): string => groupNow(grouping, said, club);
  const column = columnOf(context, "clubGroup") ?? columnOf(context, "club");
  const asking: RowDraft[] = [];
  const missing: RowDraft[] = [];
  for (const row of rows.filter(isOpen)) {
    const byClub = row.club === null ? null : clubKindOfWord(row.club);
    const byGroup = row.clubGroupText === null ? null : groupOfWord(grouping, row.clubGroupText);
    const said = byGroup ?? byClub;
    row.clubGroup = said === null ? null : saidGroup(grouping, said, row.club);
    if (row.clubGroup === null) {
      if (row.club === null && row.clubGroupText === null) missing.push(row);
      else asking.push(row);
    } else if (byGroup === null) {
      log.note(
        "club-group-by-club",
        row.row,
        column?.header,
        { value: row.club ?? "", group: inForce(row.clubGroup, row.club) },
        row.club ?? "",
      );
    } else if (byClub !== null && inForce(byClub, row.club) !== inForce(byGroup, row.club)) {
      log.note(
        "club-group-kept",
        row.row,
        column?.header,
        { value: row.club ?? "", group: inForce(byGroup, row.club) },
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
        options: groupOptions(grouping),
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
    const named = currentGroups(grouping).find(({ id }) => id === chosen)?.id;
    for (const row of group) {
      if (named) {
        row.clubGroup = named;
        log.note("club-group-answered", row.row, column?.header, { value: word, group: named }, word);
      } else log.note("left-out", row.row, column?.header, { value: word }, word);
    }
    if (!named) setBack(group, "left-out");
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
      log.note("club-group-by-day", row.row, column?.header, { group: inForce(only, null) }, only);
      return false;
    });
    if (rest.length === 0) return;
    const given = log.ask(
      { id: "club-group", code: "club-group-missing", options: groupOptions(grouping), at: column?.at },
      rest.map((row) => row.row),
    );
    answer(rest, given?.option ?? null, "");
  }
}
