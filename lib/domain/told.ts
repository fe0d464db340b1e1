import { z } from "zod";
import type { ClubGroup } from "./club-group";

/** In what form a family was told: a message, a file to keep, a letter. */
export const TOLD_KINDS = ["message", "file", "letter"] as const;

/** In what form a family was told. */
export type ToldKind = (typeof TOLD_KINDS)[number];

/** What was said of a change: better, worse, or that it moved and is neither. */
export const TOLD_CHANGES = ["better", "worse", "moved"] as const;

/** Longest text that is kept as sent, letters: a letter with a paragraph of the coach's own fills a sheet with fewer. */
export const MOST_TOLD = { text: 12_000, findings: 60 } as const;

const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);

const findings = z
  .array(
    z.strictObject({
      fundamentalId: z.string().min(1).max(80),
      /** `changed`: that it has changed; `corrected`: that what was said of it before is taken back. */
      kind: z.enum(["changed", "corrected"]),
      said: z.enum(TOLD_CHANGES),
      /** Days between which the change happened, as it was known then; null: it is taken back. */
      change: z.strictObject({ from: day, to: day }).nullable(),
    }),
  )
  .max(MOST_TOLD.findings);

/** A change that a family was told, or the taking back of one. */
export type ToldFinding = Readonly<z.infer<typeof findings>[number]>;

/** What a family was told, as it was sent. */
export interface Told {
  readonly id: string;
  readonly clubGroup: ClubGroup;
  readonly kind: ToldKind;
  /** Every word as it was sent. */
  readonly text: string;
  /** The changes that the text tells; null: they can't be read any more. */
  readonly findings: readonly ToldFinding[] | null;
  /** The day on which and as of which it was told, `YYYY-MM-DD`. */
  readonly day: string;
  readonly who: string;
  /** ISO instants; null: it stands. */
  readonly recordedAt: string;
  readonly voidedAt: string | null;
}

/** What a text told of changes, as it was kept; null: it can't be read. */
export function parseToldFindings(text: string): readonly ToldFinding[] | null {
  try {
    const read = findings.safeParse(JSON.parse(text));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/**
 * What a text tells of changes, as text to keep.
 *
 * @throws Error where a finding isn't whole
 */
export function toldFindingsText(told: readonly ToldFinding[]): string {
  return JSON.stringify(findings.parse(told));
}
