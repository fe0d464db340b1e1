/** One number by which a reader's error is measured. No call overrides it: it measures readers, not students. */
export interface ReaderErrorThreshold {
  readonly value: number;
  readonly unit: string;
  readonly reason: string;
  readonly source: string;
}

/** Version of the numbers below; it changes with any of them, and a fitted error names it. */
export const READER_ERROR_VERSION = "reader-error-1";

/** Every number by which re-reads are drawn and turned into a reader's error. */
export const READER_ERROR_THRESHOLDS = {
  pairsNeeded: {
    value: 10,
    unit: "pairs of one fundamental, frame chosen anew, all readers",
    reason:
      "with ten the 95 of 100 of the error runs from .69 to 1.83 of it; with fewer the customary figure is as good",
    source: "chi-square with nine degrees of freedom",
  },
  sharedNeeded: {
    value: 10,
    unit: "swings of one fundamental that two readers read",
    reason: "a second reader on ten stills gives the bias between readers",
    source: "Bland and Altman 1986; own choice of the count",
  },
  customaryWorth: {
    value: 4,
    unit: "degrees of freedom of the customary error",
    reason: "nobody measured it; after ten pairs it weighs 4 parts in 14",
    source: "own choice",
  },
  pooledWorth: {
    value: 10,
    unit: "degrees of freedom of the pooled error, for one reader",
    reason: "readers' errors differ by about 3 in 10, as if the pooled one had been seen ten times in each",
    source: "Smyth 2004; own simulation in the test of the shrunken variance",
  },
  offsetWorth: {
    value: 1,
    unit: "degrees of freedom of the customary offset between readers",
    reason: "two readers give one difference, which alone would say anything; the customary one counts as much",
    source: "own choice",
  },
  finestStep: {
    value: 0.1,
    unit: "the fundamental's unit",
    reason: "values that share no whole step were read to a tenth; an error of 0 can't be told from rounding",
    source: "Sheppard 1898",
  },
  waitHours: {
    value: 24,
    unit: "hours since the reading was entered",
    reason: "a value read yesterday is still remembered today",
    source: "common practice, no source",
  },
  drawn: {
    value: 20,
    unit: "readings a draw",
    reason: "twenty give the error within .76 to 1.46 of it, and take half an hour",
    source: "chi-square with nineteen degrees of freedom; own choice",
  },
  confidence: {
    value: 0.95,
    unit: "share of intervals that hold the truth",
    reason: "± on a page is always 95 of 100",
    source: "the house",
  },
} as const satisfies Readonly<Record<string, ReaderErrorThreshold>>;
