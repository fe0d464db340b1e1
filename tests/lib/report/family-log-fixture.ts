import type { FamilyLogSource } from "@/lib/report/family-log-source";

/** What a log rests on: one entry of the family's today, and one of the coach's yesterday. */
export const LOG_SOURCE: FamilyLogSource = {
  ...{ alias: "Dot", pageId: "page", today: "2026-03-01", key: "k", typed: null, reader: "other" },
  ...{ practice: "goes-on", minutes: null, daysAWeek: null, most: { minutes: 300, balls: 1000 } },
  entries: [
    {
      ...{ id: "a", day: "2026-03-01", assignmentId: null, minutes: 12, balls: 30, felt: "hard", pain: null },
      ...{ source: "family", who: "mother", recordedAt: "2026-03-01T12:00:00.000Z" },
    },
    {
      ...{ id: "b", day: "2026-02-28", assignmentId: null, minutes: 1, balls: null, felt: null, pain: null },
      ...{ source: "coach", who: "Ada", recordedAt: "2026-02-28T12:00:00.000Z" },
    },
  ],
};

/** What was typed and came back. */
export const TYPED: NonNullable<FamilyLogSource["typed"]> = {
  values: { minutes: "many", hurts: "yes", day: "2026-02-28" },
  errors: { minutes: "Please write a whole number, like 10." },
  ...{ form: "exact", pain: "none" },
};
