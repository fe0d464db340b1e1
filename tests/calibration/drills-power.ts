import { noncentralTUpperTail } from "@/lib/stats/noncentral-t-distribution";
import { tQuantile } from "@/lib/stats/t-distribution";
import { COMPARE_THRESHOLDS } from "@/lib/verdict/compare-thresholds";

/** A drill that is worth something, with what the comparison made of it. In U. */
export interface WorthDrill {
  readonly students: number;
  /** Drills of the academy that are tested together. */
  readonly tested: number;
  readonly truth: number;
  readonly estimate: number;
  readonly halfWidth: number;
  readonly works: boolean;
}

/** Drills worth something with so many students. */
export interface SizePower {
  readonly from: number;
  readonly to: number;
  readonly of: number;
  /** Share said to work. */
  readonly found: number;
  /** Mean standard error that the comparison gives, and how far its estimates truly lie about the truth (root mean square). */
  readonly said: number;
  readonly true: number;
  /** The power that a t test has with the true error, at the first step of Holm. */
  readonly theory: number;
}

/** Power by size, and the students from which theory has .95; null: not below 200, or no drill with 20 or more. */
export interface DrillsPower {
  readonly sizes: readonly SizePower[];
  readonly enough: number | null;
}

const BINS = [
  [10, 19],
  [20, 24],
  [25, 29],
  [30, 34],
  [35, 39],
  [40, 999],
] as const;

/** Splits drills worth something by how many students are on them. */
export function drillsPower(drills: readonly WorthDrill[]): DrillsPower {
  const sizes = BINS.map(([from, to]): SizePower => {
    const own = drills.filter(({ students }) => students >= from && students <= to);
    const error = rootMeanSquare(own.map(({ truth, estimate }) => estimate - truth));
    return {
      ...{ from, to, of: own.length, found: mean(own.map(({ works }) => (works ? 1 : 0))), true: error },
      said: mean(own.map(({ students, halfWidth }) => halfWidth / -tQuantile(0.025, degreesOf(students)))),
      theory: mean(own.map(({ students, tested, truth }) => powerOf(truth / error, students, tested))),
    };
  });
  return { sizes, enough: enoughFor(drills.filter(({ students }) => students >= 20)) };
}

/** An error that falls as the root of the students: the one that the larger drills have. */
function enoughFor(drills: readonly WorthDrill[]): number | null {
  if (drills.length === 0) return null;
  const alone = rootMeanSquare(drills.map(({ students, truth, estimate }) => (estimate - truth) * Math.sqrt(students)));
  const truth = mean(drills.map((drill) => drill.truth));
  const tested = Math.round(mean(drills.map((drill) => drill.tested)));
  for (let students = 10; students < 200; students++)
    if (powerOf((truth * Math.sqrt(students)) / alone, students, tested) >= 0.95) return students;
  return null;
}

function powerOf(centre: number, students: number, tested: number): number {
  const degrees = degreesOf(students);
  return noncentralTUpperTail(-tQuantile(COMPARE_THRESHOLDS.falseWorks.value / tested, degrees), degrees, centre);
}

function degreesOf(students: number): number {
  return students + COMPARE_THRESHOLDS.addedDegrees.value;
}

function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(mean(values.map((value) => value * value)));
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
