import type { Fundamental } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import type { RosterSource } from "./roster-source";

const MOST_COLUMNS = 8;

/**
 * A fundamental that fewer of the students shown have is no column: it would be one of empty strips. Share of students; a
 * quarter: own choice; `npm run picture-roster` draws a simulated academy at weeks 2, 6 and 20.
 */
const FEWEST_MEASURED = 1 / 4;

/** The fundamentals that most students have, and the one that is asked for, in the order of work. */
export function chooseColumns(source: RosterSource): readonly Fundamental[] {
  const measured = (fundamental: Fundamental): number =>
    source.students.filter((entry) => entry.summaries.some((summary) => summary.fundamentalId === fundamental.id))
      .length;
  const isAsked = (fundamental: Fundamental): boolean => fundamental.id === source.asked;
  const most = Math.max(0, ...source.fundamentals.map(measured));
  // Of what is seldom measured by anybody, the most measured is still something to see.
  const fewest = Math.min(most, FEWEST_MEASURED * source.students.length);
  return [...source.fundamentals]
    .map((fundamental) => ({ fundamental, measured: measured(fundamental) }))
    .filter(({ measured, fundamental }) => measured > 0 && (measured >= fewest || isAsked(fundamental)))
    .sort(
      (a, b) =>
        Number(isAsked(b.fundamental)) - Number(isAsked(a.fundamental)) ||
        b.measured - a.measured ||
        a.fundamental.order - b.fundamental.order,
    )
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
