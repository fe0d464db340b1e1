import type { Glyph } from "./basic-model";

/**
 * What a family is told, in finished sentences: the page, the message, the file and the letter all say the same ones. An empty
 * text or list: nothing is said of it to that reader.
 */
export interface FamilyStory {
  /** The finding of the page with the alias in it, without a full stop; never empty. */
  readonly heading: string;
  /** One true good thing, counted; that nothing is on file yet where there is none. Never empty. */
  readonly good: string;
  /** Whatever else was done and counted; not in a message. */
  readonly alsoGood: readonly string[];
  /** What has truly changed, latest first, with what is taken back before it; or the one sentence that nothing has. */
  readonly changed: readonly string[];
  /** The mark of each of them, in their order; null: it has none. */
  readonly changedMarks: readonly (Glyph | null)[];
  /** The one thing of which it can't be told yet, and what would probably tell it. */
  readonly unsure: string;
  /** The one task until the next video, or the stop; never empty. */
  readonly task: string;
  /** Solid strikes of those that were counted. */
  readonly contact: string;
  /** Whatever else is told of what is measured, in the order of work; not in a message. */
  readonly rest: readonly string[];
  /** Sizes in degrees and per cent, for behind “show the numbers”; never on a page for the youngest. */
  readonly numbers: readonly string[];
}
