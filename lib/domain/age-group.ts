/** Groups of age, the youngest first; `unknown`: no birth year is on file. */
export const AGE_GROUPS = ["under-9", "9-12", "13-15", "16-17", "18-up", "unknown"] as const;

/** A group of age. */
export type AgeGroup = (typeof AGE_GROUPS)[number];

/**
 * Last age of each group but the last, in years. Under nine is where a family's page has no figures, 16 and 18 are ages at which
 * consents commonly change hands; 12 is our own choice.
 */
const LAST_AGES = [8, 12, 15, 17] as const;

/**
 * The group of age in which a student is this year. The year alone is known: whoever has their birthday still to come counts as
 * old as they turn.
 *
 * @param today the academy's day, `YYYY-MM-DD`
 */
export function ageGroupOf(birthYear: number | null, today: string): AgeGroup {
  if (birthYear === null) return "unknown";
  const age = Number(today.slice(0, 4)) - birthYear;
  const at = LAST_AGES.findIndex((last) => age <= last);
  return AGE_GROUPS[at < 0 ? LAST_AGES.length : at] ?? "unknown";
}
