import type { Glyph } from "./basic-model";
import type { FamilyFilming, FamilyLook } from "./family-look-model";
import type { FamilyPractice } from "./family-practice-model";
import type { FamilyPress } from "./family-press-model";

/** A part of a family's page: a heading and sentences. */
export interface FamilyPart {
  readonly heading: string;
  readonly lines: readonly string[];
}

/** A sentence under its mark; null: it has none. */
export interface FamilyTold {
  readonly glyph: Glyph | null;
  readonly line: string;
}

/** What a family reads of one student, in the order of SEASON.md 24. */
export interface FamilyPage {
  /** The finding, with the alias in it. */
  readonly title: string;
  /** The day of the last video; empty: there was none. */
  readonly seen: string;
  readonly look: FamilyLook;
  /** What was just done; empty: nothing. */
  readonly notice: string;
  readonly good: FamilyPart;
  /** What has changed, what can't be told yet, and how the ball was hit, each with its mark. */
  readonly told: readonly FamilyTold[];
  /** In place of the task while something hurts. */
  readonly stop: (FamilyPart & { readonly over: FamilyPress | null }) | null;
  readonly task: FamilyPart | null;
  readonly practice: FamilyPractice;
  /** Null while something hurts. */
  readonly filming: FamilyFilming | null;
  readonly care: FamilyPart;
  /** Whatever else is told of what is measured. */
  readonly more: readonly string[];
  readonly ask: {
    readonly heading: string;
    readonly lines: readonly string[];
    readonly presses: readonly FamilyPress[];
  };
  readonly consent: FamilyPart;
  readonly about: FamilyPart & { readonly opened: readonly string[] };
}
