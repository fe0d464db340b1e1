import type { Words } from "./catalogue";
import { sayMonth, sayOnDay } from "./day-words";

/** What a family is told of one thing that is measured; days are `YYYY-MM-DD`. */
export type FamilyFinding =
  /** Better, or worse, than on the last day before the change; only what stands on the roster's list. */
  | { readonly kind: "better" | "worse"; readonly before: string }
  /** Moved: still inside, past it to the other side, or no nearer; only what stands on the roster's list. */
  | { readonly kind: "within" | "through" | "elsewhere" }
  /** Owned for so many whole weeks; 0: not for one yet. */
  | { readonly kind: "good"; readonly weeks: number }
  | { readonly kind: "same"; readonly videos: number }
  /** Enough for itself, and not on the roster's list. */
  | { readonly kind: "checking-better" | "checking" }
  /** What the page said on a day and later films don't bear out. */
  | {
      readonly kind: "corrected";
      readonly said: "better" | "worse" | "moved";
      readonly on: string;
      /** Said in a text that was sent, and whether there are videos since; absent: by the page. */
      readonly by?: "told";
      readonly videos?: "yes" | "no";
    }
  /** Open; `videos` more would probably show it, null: no plan would. */
  | { readonly kind: "open"; readonly videos: number | null };

/** When something was as it isn’t any more, behind a comparison: “in March”, “on 3 May”, “in March 2025”. */
export function sayWhen(words: Words, before: string, today: string): string {
  if (before.slice(0, 7) === today.slice(0, 7))
    return words.say("family.when.day", { day: sayOnDay(words, before, today) });
  return words.say("family.when.month", { month: sayMonth(words, before, today) });
}

/** A text that begins a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
