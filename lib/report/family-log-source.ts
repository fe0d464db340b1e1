import type { Practice } from "@/lib/domain/practice";
import type { PainPlace } from "@/lib/domain/student";

/** Practice with what was said of pain beside it. */
export type PracticeEntry = Omit<Practice, "voidedAt"> & { readonly pain: PainPlace | null };

/** What the log on a family's page rests on. */
export interface FamilyLogSource {
  readonly alias: string;
  readonly pageId: string;
  readonly today: string;
  /** `young`: told no numbers. */
  readonly reader: "young" | "other";
  /** Whether something hurts, or the coach has put it on hold. */
  readonly practice: "goes-on" | "rests";
  /** Of the dose of the drill in hand; null: it names none, or there is no drill. */
  readonly minutes: number | null;
  readonly daysAWeek: number | null;
  /** More than this in one day is refused. */
  readonly most: { readonly minutes: number; readonly balls: number };
  /** What stands. */
  readonly entries: readonly PracticeEntry[];
  /** Makes a form that is sent twice one form. */
  readonly key: string;
  /** What was typed and refused; null: nothing. */
  readonly typed: {
    readonly values: Readonly<Record<string, string>>;
    readonly errors: Readonly<Record<string, string>>;
    /** By which form. */
    readonly form: "tap" | "exact";
    /** Whether it was written down all the same that something hurts. */
    readonly pain: "saved" | "none";
  } | null;
}
