import type { FamilyPress } from "./family-press-model";
import type { FieldModel, FormModel } from "./form-model";

/** A day of the last week as a cell: `said` is a number or a dash. */
export interface FamilyWeekDay {
  readonly weekday: string;
  readonly said: string;
  readonly unit: string;
  /** The whole of it in words. */
  readonly spoken: string;
  readonly when: "today" | "before";
}

/** Buttons that write today's minutes down in one tap, once it is said whether something hurts. */
export interface FamilyTap {
  readonly action: string;
  readonly hidden: FormModel["hidden"];
  readonly refusal: string;
  readonly hurts: FieldModel;
  readonly day: string;
  readonly buttons: readonly { readonly value: string; readonly said: string; readonly whom: string }[];
  /** In place of the buttons as soon as something hurts. */
  readonly stop: {
    readonly heading: string;
    readonly lines: readonly string[];
    readonly place: FieldModel;
    readonly submit: string;
  };
}

/** What the script says, each a message. */
export type KeepWord =
  | "heading"
  | "line"
  | "minutes"
  | "one-ball"
  | "balls"
  | "easy"
  | "hard"
  | "now"
  | "not"
  | "twice"
  | "waits"
  | "sending"
  | "sent"
  | "refused"
  | "drop"
  | "send"
  | "pain"
  | "pain.again"
  | "over"
  | "press"
  | "dead"
  | "dead.title"
  | "dead.next"
  | "hurts-missing"
  | "no-practice"
  | "practice-of-nothing"
  | "not-a-count"
  | "much-practice"
  | "many-balls";

/** What the page's script needs to keep what can't be sent: words with places for what is known there alone, no name. */
export interface FamilyKeep {
  readonly pageId: string;
  readonly action: string;
  /** Days that can still be sent, and how they are said. */
  readonly days: readonly (readonly [string, string])[];
  readonly most: { readonly minutes: number; readonly balls: number };
  readonly words: Readonly<Record<KeepWord, string>>;
}

/** Practice of the last days, and where it is written down. */
export interface FamilyPractice {
  readonly heading: string;
  /** Oldest first, so that today stands last. */
  readonly week: readonly FamilyWeekDay[];
  /** What takes back what the family wrote down: of today and yesterday, then of the days before. */
  readonly undo: readonly FamilyPress[];
  readonly older: { readonly label: string; readonly undo: readonly FamilyPress[] } | null;
  /** Null: practice rests, and `rests` says so. */
  readonly tap: FamilyTap | null;
  readonly rests: string;
  readonly form: {
    /** Above the form, which is shut until it is asked for. */
    readonly more: string;
    readonly open: "open" | "shut";
    readonly action: string;
    readonly refusal: string;
    readonly fields: readonly FieldModel[];
    readonly hidden: FormModel["hidden"];
    readonly submit: string;
  };
  readonly keep: FamilyKeep;
}
