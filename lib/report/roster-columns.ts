import type { Fundamental } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import type { RosterSource } from "./roster-source";

const MOST_COLUMNS = 8;

/** The fundamentals that most students have, in the order of work. */
export function chooseColumns(source: RosterSource): readonly Fundamental[] {
  const measured = (fundamental: Fundamental): number =>
    source.students.filter((entry) => entry.summaries.some((summary) => summary.fundamentalId === fundamental.id))
      .length;
  return [...source.fundamentals]
    .map((fundamental) => ({ fundamental, measured: measured(fundamental) }))
    .filter((entry) => entry.measured > 0)
    .sort((a, b) => b.measured - a.measured || a.fundamental.order - b.fundamental.order)
    .slice(0, MOST_COLUMNS)
    .map((entry) => entry.fundamental)
    .sort((a, b) => a.order - b.order);
}

/** Neighbouring columns of one phase under one heading. */
export function columnGroups(words: Words, columns: readonly Fundamental[]): { label: string; span: number }[] {
  const groups: { phase: string; label: string; span: number }[] = [];
  for (const fundamental of columns) {
    const last = groups.at(-1);
    if (last && last.phase === fundamental.phase) last.span += 1;
    else groups.push({ phase: fundamental.phase, label: words.say(`phase.${fundamental.phase}`), span: 1 });
  }
  return groups.map(({ label, span }) => ({ label, span }));
}

/** The goal that most of the column's students have. */
export function commonGoal(
  source: RosterSource,
  fundamental: Fundamental,
): { low: number | null; high: number | null } {
  const goals = source.students.flatMap((entry) =>
    entry.summaries.filter((summary) => summary.fundamentalId === fundamental.id).map((summary) => summary.goal),
  );
  const tally = new Map<string, number>();
  for (const goal of goals)
    tally.set(JSON.stringify([goal.low, goal.high]), (tally.get(JSON.stringify([goal.low, goal.high])) ?? 0) + 1);
  const best = [...tally].sort((a, b) => b[1] - a[1])[0];
  if (!best) return { low: null, high: null };
  const [low, high] = JSON.parse(best[0]) as [number | null, number | null];
  return { low, high };
}
