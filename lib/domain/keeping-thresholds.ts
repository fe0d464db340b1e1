/** One number of how long something is kept or holds: its value, what it is counted in, and why it has this value. */
interface KeepingThreshold {
  readonly value: number;
  readonly unit: string;
  /** Least and largest value that an academy may set; equal: it sets none. */
  readonly bounds: readonly [number, number];
  readonly reason: string;
  readonly source: string;
}

/** How long consents hold, how early their end is told, and what an academy begins with for keeping. They decide no verdict. */
export const KEEPING_THRESHOLDS = {
  consentMonths: {
    value: 12,
    unit: "months, the usual length of a consent",
    bounds: [12, 12],
    reason: "consent is asked anew each season, and a season comes round once a year",
    source: "common practice, no source",
  },
  longestConsentMonths: {
    value: 24,
    unit: "months, the longest consent that a form takes",
    bounds: [24, 24],
    reason: "a season and the one after it; longer, nobody would be asked anew",
    source: "own choice",
  },
  consentNoticeDays: {
    value: 30,
    unit: "days before its end from which a consent's end is told",
    bounds: [30, 30],
    reason: "a month has lessons enough to ask and be answered on paper",
    source: "own choice",
  },
  keepMonths: {
    value: 24,
    unit: "months for which the record of somebody who has left, or whom nobody has filmed, is kept",
    bounds: [1, 120],
    reason: "somebody who comes back after a year off finds the record; two years on nobody needs it",
    source: "common practice, no source; local rules come first",
  },
  linkDays: {
    value: 180,
    unit: "days for which a family's link opens",
    bounds: [1, 366],
    reason: "half a year is a season's films; a link that outlasts the year's consent would show what nobody agreed to",
    source: "common practice, no source",
  },
  ownConsentAge: {
    value: 16,
    unit: "years of age from which a student's own consent is asked for",
    bounds: [13, 18],
    reason: "laws about children's data ask a parent up to an age between 13 and 18, most often 16",
    source: "TRADE.md section 6: 16, and states may lower it to 13; grown up at 18. Local rules come first",
  },
} as const satisfies Readonly<Record<string, KeepingThreshold>>;
