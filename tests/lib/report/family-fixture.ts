import { buildFamilyLook } from "@/lib/report/build-family-look";
import type { FamilySource } from "@/lib/report/family-source";
import { wordsFor } from "@/lib/words/catalogue";

const STORY = {
  ...{
    heading: "Dot’s page",
    good: "There is nothing to tell yet.",
    changed: [],
    changedMarks: [],
    unsure: "",
    task: "One task.",
    contact: "",
  },
  ...{ alsoGood: [], rest: [], numbers: [] },
};

const LOOK = buildFamilyLook(wordsFor("en"), {
  ...{ student: { alias: "Dot", birthYear: 2012, hand: "right" }, today: "2026-09-12" },
  ...{ tracks: [], inHand: null, videos: [], numbers: [], plan: null, captures: [] },
});

/** A family's page with nothing on file. */
export const FAMILY_SOURCE: FamilySource = {
  ...{ story: STORY, look: LOOK },
  student: { id: "s", alias: "Dot", birthYear: 2012, hand: "right", zone: "UTC", clubs: "" },
  link: { id: "page", label: "mother", expiresAt: "2026-09-30T12:00:00.000Z" },
  today: "2026-09-12",
  ...{ tracks: [], videos: [], task: null, practice: [], events: [], consents: [], requests: [], openings: [] },
  ...{ keepMonths: 24, done: null, key: "k", typed: null, most: { minutes: 300, balls: 1000 } },
  dayOf: (instant) => instant.slice(0, 10),
  sayAt: (instant) => instant.slice(0, 16),
};

/** A practice row of ten minutes, made by the mother. */
export const practised = (day: string, over = {}) => ({
  ...{ id: day, day, assignmentId: null, minutes: 10, balls: null, felt: null, pain: null, ...over },
  ...({ source: "family", who: "mother", recordedAt: `${day}T12:00:00.000Z` } as const),
});

/** One video a day: "+" was used, "-" was not. */
export const filmed = (uses: string): FamilySource["videos"] =>
  [...uses].map((use, at) => ({
    day: `2026-08-${10 + at}`,
    use: use === "+" ? ("used" as const) : ("apart" as const),
  }));
