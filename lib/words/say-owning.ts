import type { OwningRule } from "@/lib/domain/owning-rule";
import type { Words } from "./catalogue";

/** An owning rule in one sentence, with its numbers. */
export function sayOwning(words: Words, rule: OwningRule): string {
  return words.say("owning.rule", {
    sessions: rule.sessions,
    span: rule.spanDays,
    rest: rule.restDays,
    share: Math.round(100 * rule.share),
    low: Math.round(100 * rule.shareLow),
  });
}
