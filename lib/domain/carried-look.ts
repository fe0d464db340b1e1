import { z } from "zod";
import { clubGroup, count, day, fundamentalId, id, text } from "./archive-fields";
import { VERDICTS } from "./track-verdict";

/** The longest kept body of a look, in characters: figures and words of fixed lists alone, about 1,500 at most. */
export const LONGEST_CARRIED = 4000;

const figure = z.number().finite().min(-1e9).max(1e9);
const share = z.number().min(0).max(1);
const moved = z.enum(["within", "through"]).nullable();

/** An estimate with its intervals, in the unit of its fundamental. */
export const carriedInterval = z.object({
  estimate: figure,
  low80: figure,
  high80: figure,
  low95: figure,
  high95: figure,
});

/** A proved change as it was said. */
export const carriedChange = z.object({
  verdict: z.enum(VERDICTS),
  shape: z.enum(["step", "gradual"]),
  from: day,
  to: day,
  size: carriedInterval,
  before: carriedInterval,
  after: carriedInterval,
  moved,
  provedOn: day,
});

/** What stands in a whole snapshot and is shown of it. */
const whole = z.strictObject({
  /** Judged sessions, those set aside among them. */
  sessions: count,
  /** Of nothing lasting having happened. */
  noChange: share,
  moved,
  level: carriedInterval.nullable(),
  position: z.enum(["inside", "outside", "edge"]).nullable(),
  change: carriedChange.nullable(),
  changeBelow: figure.nullable(),
  ownedSince: day.nullable(),
});

const said = z.strictObject({
  date: day,
  verdict: z.enum(VERDICTS),
  /** On that academy's list of proved changes then. */
  listed: z.boolean(),
  logBayesFactor: figure,
  directionUp: share,
  /** Of the latest look the whole snapshot; of those before it an archive holds the word and the evidence. */
  whole: whole.nullable(),
});

/** What another academy said after a session: figures, days and words of fixed lists, and no free text at all. */
export type SaidLook = Readonly<z.infer<typeof said>>;

/** A look of another academy in an archive that passes it on. */
export const archivedCarried = z.strictObject({
  sessionId: id,
  fundamentalId,
  clubGroup,
  saidBy: text.max(200),
  policyVersion: text.max(100),
  noiseModelName: id,
  /** JSON: what was said. */
  body: z.string().max(LONGEST_CARRIED),
});

export type ArchivedCarried = Readonly<z.infer<typeof archivedCarried>>;

/** The one text of what was said. */
export function carriedText(look: SaidLook): string {
  return JSON.stringify(said.parse(look));
}

/**
 * What was said, from its kept text; null: it is no such text, and nothing of it is shown.
 *
 * @param kept JSON of a `SaidLook` and nothing else beside
 */
export function parseCarried(kept: string): SaidLook | null {
  if (kept.length > LONGEST_CARRIED) return null;
  try {
    const read = said.safeParse(JSON.parse(kept));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}
