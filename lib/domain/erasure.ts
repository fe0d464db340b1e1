import { z } from "zod";

/** Why a student's record is erased: somebody asked; the student left, or nobody used it, so long ago; it was a mistake. */
export const ERASURE_REASONS = ["asked", "departed", "idle", "mistake"] as const;

export type ErasureReason = (typeof ERASURE_REASONS)[number];

/** What a person may say; that a time has passed the clock alone says. */
export const SAID_REASONS = ["asked", "mistake"] as const satisfies readonly ErasureReason[];

/**
 * One line of the list of erased students, which stands beside the data and beside every copy of them.
 *
 * `student`: digest of the academy's id and the student's; nobody is found by it who isn't at hand already.
 */
export const erasedLineSchema = z.object({
  student: z.string().regex(/^[0-9a-f]{64}$/),
  day: z.iso.date(),
  reason: z.enum(ERASURE_REASONS),
});

export type ErasedLine = z.infer<typeof erasedLineSchema>;
