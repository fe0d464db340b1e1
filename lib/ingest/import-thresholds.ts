/** One number by which an import decides to ask. */
interface ImportThreshold {
  readonly value: number;
  readonly unit: string;
  readonly reason: string;
  readonly source: string;
}

/** From how many values on an import doubts a whole column, and not one value of it. */
export const IMPORT_THRESHOLDS = {
  contrarySigns: {
    value: 5,
    unit: "left-handers' values on the other side of nought than the goals",
    reason: "five by chance, each as likely as not, is one file in 32; whoever is far from the goal has fewer",
    source: "coin tosses; own choice of the share",
  },
  otherUnit: {
    value: 5,
    unit: "values of a column, all as small as in another unit",
    reason: "one or two small values are a student's; a whole column of them is a unit",
    source: "own choice",
  },
  outOfRange: {
    value: 0.05,
    unit: "share of a fundamental's values that are out of range",
    reason: "with more of them the unit is in doubt, not a value, and all of them wait",
    source: "own choice",
  },
} as const satisfies Readonly<Record<string, ImportThreshold>>;
