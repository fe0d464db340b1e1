import type { Link } from "./basic-model";
import type { BriefWord } from "./brief-model";

/** What is said of a finding where it is the one next thing. */
export interface NextWords {
  readonly heading: string;
  readonly text: string;
  readonly alters: string;
}

/** One line of a list of the brief before it is said; what is never shown is never put into words. */
export interface BriefFinding {
  /** `slip`, `gain` and `moved` stand among what is newly proved and in no list of the brief. */
  readonly word: BriefWord | "slip" | "gain" | "moved";
  readonly studentId: string;
  readonly alias: string;
  /** What is found, with what it rests on: put away, it comes back when that has changed. */
  readonly key: string;
  readonly fundamental: Link | null;
  /** Why. */
  say(): string;
  /** Null: it never is the one next thing. */
  readonly next: (() => NextWords) | null;
}
