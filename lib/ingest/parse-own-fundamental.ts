import { z } from "zod";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import { CLUB_KINDS } from "@/lib/domain/club-group";
import { CHECKPOINTS, type Fundamental, isOwnId, type OwnId, PHASES, UNITS, VIEWS } from "@/lib/domain/fundamental";

const edge = z.number().finite().nullable();
const edges = z
  .object({ low: edge, high: edge })
  .refine(({ low, high }) => low === null || high === null || low < high);

const defined = {
  ownName: z.string().trim().min(1).max(60),
  ownHow: z.string().optional(),
  ownPlus: z.string().optional(),
  unit: z.enum(UNITS),
  view: z.enum(VIEWS),
  checkpoint: z.enum(CHECKPOINTS),
  phase: z.enum(PHASES),
  order: z.number().finite(),
  mirrors: z.enum(["mirrors", "same"]),
  plausible: z.object({ low: z.number().finite(), high: z.number().finite() }).refine(({ low, high }) => low < high),
  goals: z.object(Object.fromEntries(CLUB_KINDS.map((kind) => [kind, edges]))),
  readerSd: z.number().positive().finite(),
  cameraSdUnknown: z.number().min(0).finite(),
  sensitivity: z.object({ yaw: z.number().finite(), roll: z.number().finite(), offset: z.number().finite() }),
  worthwhile: z.number().positive().finite().optional(),
  retiredOn: z.string().refine(isCalendarDay).nullable().optional(),
};

const definition = z.object({
  id: z.string().refine((id): id is OwnId => isOwnId(id)),
  derivedFrom: z.null(),
  ...defined,
  earlier: z
    .array(
      z.object({
        ...defined,
        until: z.string().refine(isCalendarDay),
        who: z.string(),
        why: z.string(),
        changedAt: z.string(),
      }),
    )
    .optional(),
});

/**
 * An academy's own fundamental from its kept definition.
 *
 * @param text JSON
 * @returns null when the text is not a whole definition
 */
export function parseOwnFundamental(text: string): Fundamental | null {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return null;
  }
  const parsed = definition.safeParse(value);
  return parsed.success ? (parsed.data as Fundamental) : null;
}
