import type { Threshold } from "@/lib/verdict/threshold";

/** Changes with any of the thresholds below or with how a test is judged; kept with every look. */
export const FAIR_TEST_VERSION = "fair-1";

/** Thresholds of tests by the lot. They decide no verdict of a track. */
export const FAIR_TEST_THRESHOLDS = {
  level: {
    value: 0.05,
    unit: "share of tests of two equal drills that ever prove one of them, all looks together",
    bounds: [0.001, 0.2],
    reason: "one in twenty, the promise that every other list of the academy keeps",
    source: "common practice, no source",
  },
  power: {
    value: 0.8,
    unit: "chance that a difference of the least size worth finding is found",
    bounds: [0.5, 0.99],
    reason: "four in five, as in every plan of films",
    source: "Cohen, J. (1988), 2.4, from memory",
  },
  baseFilms: {
    value: 3,
    unit: "last films before the draw whose mean is the start",
    bounds: [1, 10],
    reason: "one film is mostly the day's luck; the comparison across students takes three too",
    source: "own simulation of drill comparisons (mean of the last 3 before start)",
  },
  postFilms: {
    value: 8,
    unit: "films after the draw that count, at most",
    bounds: [1, 40],
    reason: "the comparison across students takes eight too",
    source: "own simulation of drill comparisons (mean of the next up to 8)",
  },
  followDays: {
    value: 42,
    unit: "days after a draw whose films count, as it is proposed",
    bounds: [7, 182],
    reason: "two weeks of practice and a week of rest, twice",
    source: "common practice, no source",
  },
  spreadFrom: {
    value: 8,
    unit: "students from whom the spread of gains is taken, at least",
    bounds: [3, 100],
    reason: "an sd of eight is known to within about a half either way",
    source: "chi-square interval of an sd",
  },
  orders: {
    value: 5000,
    unit: "orders of the lot that a look is judged by, at most",
    bounds: [100, 1_000_000],
    reason: "a p of .05 is then known to within .006, one of .005 to within .002",
    source: "binomial standard error, twice",
  },
} as const satisfies Record<string, Threshold>;

/** Sizes of blocks: they vary, so that the end of one can't be counted out. */
export const BLOCK_SIZES = [2, 4, 6] as const;
