import { fQuantile } from "./f-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { requireProbability } from "./require-probability";

/** A reliability of one value; it and its ends may be below 0, none is above 1. */
export interface Reliability {
  readonly value: number;
  /** Too-few, of ICC(2,1) only, counts the whole approximate degrees of freedom of its error, 1 needed. */
  readonly interval: Outcome<{ readonly low: number; readonly high: number }>;
}

/** The reliability of one value under the three designs. */
export interface IntraclassCorrelation {
  /** ICC(1,1): each target has judges of its own. */
  readonly oneWay: Reliability;
  /** ICC(2,1): the same judges, drawn from many; their differences count as error. */
  readonly twoWayRandom: Reliability;
  /** ICC(3,1): these judges alone; their differences don't count. */
  readonly twoWayFixed: Reliability;
}

/** Residual squares below this share of all squares are rounding. */
const ROUNDING = 1e-24;

/**
 * Intraclass correlations of a single value, with intervals from F.
 *
 * `table`: one row a target, one column a judge, complete, rows of equal length, in one unit; `confidence`: 0.95 for 95 of
 * 100. Fewer than two targets or judges: too-few, counting those. Judges that agree up to a constant: too-few, counting
 * residuals that differ from 0 (1 needed). Bad input: unequal rows, NaN, infinity or a confidence outside 0 to 1 throws a
 * RangeError. Assumes normal, independent errors of one variance; the interval of ICC(2,1) is approximate (Satterthwaite).
 *
 * Source: Shrout, P.E. & Fleiss, J.L. (1979), Psychological Bulletin 86, 420-428.
 */
export function intraclassCorrelation(
  table: readonly (readonly number[])[],
  confidence: number,
): Outcome<IntraclassCorrelation> {
  requireProbability(confidence, "confidence");
  const n = table.length;
  const k = table[0]?.length ?? 0;
  table.forEach((row, index) => {
    if (row.length !== k) throw new RangeError(`table[${index}] must have ${k} values, got ${row.length}`);
    requireFinite(row, `table[${index}]`);
  });
  if (n < 2) return tooFew(n, 2);
  if (k < 2) return tooFew(k, 2);

  const anchor = table[0]?.[0] as number;
  const shifted = table.map((row) => row.map((value) => value - anchor));
  const rows = shifted.map(mean);
  const columns = Array.from({ length: k }, (_, j) => mean(shifted.map((row) => row[j] as number)));
  const grand = mean(rows);
  const squares = (values: readonly number[]) => values.reduce((sum, value) => sum + value * value, 0);
  const targets = k * squares(rows.map((row) => row - grand));
  const judges = n * squares(columns.map((column) => column - grand));
  const residual = squares(
    shifted.flatMap((row, i) => row.map((value, j) => value - (rows[i] as number) - (columns[j] as number) + grand)),
  );
  if (residual <= ROUNDING * (targets + judges + residual)) return tooFew(0, 1);

  const between = targets / (n - 1);
  const judge = judges / (k - 1);
  const error = residual / ((n - 1) * (k - 1));
  const within = (judges + residual) / (n * (k - 1));
  const level = (1 + confidence) / 2;
  const byF = (f: number, degrees: number): Reliability => {
    const reliability = (ratio: number) => (ratio - 1) / (ratio + k - 1);
    return {
      value: reliability(f),
      interval: ok({
        low: reliability(f / fQuantile(level, n - 1, degrees)),
        high: reliability(f * fQuantile(level, degrees, n - 1)),
      }),
    };
  };

  const value = (between - error) / (between + (k - 1) * error + (k * (judge - error)) / n);
  const ofJudges = (k * value * judge) / error;
  const ofRest = n * (1 + (k - 1) * value) - k * value;
  const degrees = ((n - 1) * (k - 1) * (ofJudges + ofRest) ** 2) / ((n - 1) * ofJudges ** 2 + ofRest ** 2);
  const ends = () => {
    const down = fQuantile(level, n - 1, degrees);
    const up = fQuantile(level, degrees, n - 1);
    const rest = k * judge + (k * n - k - n) * error;
    return {
      low: (n * (between - down * error)) / (down * rest + n * between),
      high: (n * (up * between - error)) / (rest + n * up * between),
    };
  };
  return ok({
    oneWay: byF(between / within, n * (k - 1)),
    twoWayRandom: { value, interval: degrees >= 1 ? ok(ends()) : tooFew(0, 1) },
    twoWayFixed: byF(between / error, (n - 1) * (k - 1)),
  });
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
