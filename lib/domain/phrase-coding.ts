import { z } from "zod";
import { CONTACT_KINDS } from "./contact-word";

/** Most strikes that a phrase can be said to count; a session's form takes no more balls either. */
export const MOST_COUNTED = 1000;

const coding = z.union([
  z.object({
    as: z.literal("count"),
    count: z.number().int().min(0).max(MOST_COUNTED),
    of: z.enum(["as-read", "none"]),
  }),
  z.object({ as: z.literal("strike"), kind: z.enum(CONTACT_KINDS) }),
  z.object({ as: z.enum(["mention", "nothing", "as-read"]) }),
]);

/**
 * What an academy said that a phrase about a strike is: one of that kind, a mention and no count, no strike at all, or
 * again what the rules read in it. A count says how many, and whether they are of as many as the note says: another number
 * of balls can't be said, for none is made up.
 */
export type PhraseCoding = Readonly<z.infer<typeof coding>>;

/**
 * A coding as it was kept.
 *
 * @returns null where the text isn't a whole coding
 */
export function parsePhraseCoding(text: string): PhraseCoding | null {
  try {
    return coding.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}

/** One coding as it was recorded. */
export interface RecordedCoding {
  /** In the form in which phrases are compared; or the key of a phrase's count (`count-key.ts`). */
  readonly phrase: string;
  readonly coding: PhraseCoding;
  readonly who: string;
  /** The hour, ISO. */
  readonly recordedAt: string;
}

/**
 * The codings in force: the latest of each phrase, but for those taken back.
 *
 * @param recorded oldest first
 * @returns in the order of their recording
 */
export function codingsInForce(recorded: readonly RecordedCoding[]): readonly RecordedCoding[] {
  const latest = new Map<string, RecordedCoding>();
  for (const row of recorded) {
    latest.delete(row.phrase);
    latest.set(row.phrase, row);
  }
  return [...latest.values()].filter((row) => row.coding.as !== "as-read");
}
