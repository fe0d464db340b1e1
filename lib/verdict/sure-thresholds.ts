import type { Threshold } from "./threshold";

/** What decides how a proved change is spoken of once later films have come. It decides no verdict. */
export const SURE_THRESHOLDS = {
  lessSure: {
    value: 0.1,
    unit: "chance that nothing lasting happened, above which a change that still stands as proved is said to be less sure",
    bounds: [0.05, 0.5],
    reason:
      "the list as a whole is wrong in at most 5 of 100; a change that the films since leave at twice that or more is no longer one to tell a family of",
    source: "IDENTITY.md, one rule of speech, and SEASON.md 19; the figure is common practice, no source",
  },
} as const satisfies Record<string, Threshold>;
