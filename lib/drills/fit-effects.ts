import { independentColumns } from "@/lib/stats/independent-columns";
import { type RobustLeastSquares, robustLeastSquares } from "@/lib/stats/robust-least-squares";
import { tQuantile, tUpperTail } from "@/lib/stats/t-distribution";
import type { Policy } from "@/lib/verdict/policy";
import type { Estimate } from "./comparison";
import type { Before } from "./episode";

/** One student in a fit. */
export interface FitRow {
  readonly coach: string;
  /** Null: the reference. */
  readonly drill: string | null;
  readonly before: Before;
  readonly outcome: number;
  /** Days from the run to the middle of the outcome. */
  readonly days: number;
  /** Further columns, the same names in every row. */
  readonly extra?: Readonly<Record<string, number>>;
}

/** What one column of the fit says. */
export interface FittedEffect extends Estimate {
  /** One-sided: chance of so large an estimate were there no effect. */
  readonly p: number;
  /** How much the estimate falls when each row is left out, in the order of the rows. */
  readonly influence: readonly number[];
}

/** The effects of one fit; what can't be told from the other columns is absent. */
export interface FittedEffects {
  readonly drills: ReadonlyMap<string, FittedEffect>;
  readonly extra: ReadonlyMap<string, FittedEffect>;
  readonly residualSd: number;
}

/** A coach's own column takes so many students. */
const COACH_ROWS = 3;

/**
 * What drills add to where students would have come without: least squares on the run before, the level and slope before
 * that, the days gone by and a constant for each coach, with errors that stand however students' spread differs.
 *
 * @param rows one a student; those with a short history have a level and a slope of their own
 * @param drills which get a column; every other row's is the reference's
 * @returns effects in the unit of the outcome; null where the rows are too few for the columns
 */
export function fitEffects(
  rows: readonly FitRow[],
  drills: readonly string[],
  { addedDegrees }: Policy,
): FittedEffects | null {
  const named = columnsOf(rows, drills);
  const kept = independentColumns(named.map((column) => column.values));
  const columns = named.filter((_, index) => kept[index]);
  const fitted = robustLeastSquares(
    columns.map((column) => column.values),
    rows.map((row) => row.outcome),
    "with-constant",
  );
  if (fitted.kind !== "ok") return null;
  const found = (kind: Column["kind"]) =>
    new Map(
      columns.flatMap((column, index) =>
        column.kind === kind
          ? [[column.name, effectOf(fitted.value, index + 1, onColumn(column) + addedDegrees)] as const]
          : [],
      ),
    );
  return { drills: found("drill"), extra: found("extra"), residualSd: fitted.value.fit.residualSd };
}

interface Column {
  readonly kind: "other" | "extra" | "drill";
  readonly name: string;
  readonly values: readonly number[];
}

function columnsOf(rows: readonly FitRow[], drills: readonly string[]): readonly Column[] {
  const column = (kind: Column["kind"], name: string, of: (row: FitRow) => number): Column => ({
    kind,
    name,
    values: rows.map(of),
  });
  const counts = new Map<string, number>();
  for (const { coach } of rows) counts.set(coach, (counts.get(coach) ?? 0) + 1);
  const coaches = [...counts].filter(([, count]) => count >= COACH_ROWS).map(([name]) => name);
  return [
    column("other", "run", ({ before }) => (before.earlier === null ? 0 : before.run)),
    column("other", "earlier", ({ before }) => before.earlier?.mean ?? 0),
    column("other", "slope", ({ before }) => before.earlier?.slope ?? 0),
    column("other", "short", ({ before }) => (before.earlier === null ? 1 : 0)),
    column("other", "run-of-short", ({ before }) => (before.earlier === null ? before.run : 0)),
    column("other", "days", (row) => row.days),
    ...coaches.sort().map((name) => column("other", name, (row) => (row.coach === name ? 1 : 0))),
    ...Object.keys(rows[0]?.extra ?? {}).map((name) => column("extra", name, (row) => row.extra?.[name] ?? 0)),
    ...drills.map((name) => column("drill", name, (row) => (row.drill === name ? 1 : 0))),
  ];
}

function onColumn(column: Column): number {
  return column.values.filter((value) => value !== 0).length;
}

function effectOf({ fit, standardErrors, influence }: RobustLeastSquares, index: number, most: number): FittedEffect {
  const estimate = fit.coefficients[index] as number;
  const error = standardErrors[index] as number;
  const degrees = Math.max(3, Math.min(fit.degrees, most));
  const reach = -tQuantile(0.025, degrees) * error;
  return {
    estimate,
    low95: estimate - reach,
    high95: estimate + reach,
    p: error > 0 ? tUpperTail(estimate / error, degrees) : 1,
    influence: influence[index] as readonly number[],
  };
}
