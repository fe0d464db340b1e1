import { type DatedOwningRule, owningRuleOn } from "@/lib/domain/owning-rule";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { policyOwning } from "@/lib/verdict/owned-since";
import { POLICY } from "@/lib/verdict/policy";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayOwning } from "@/lib/words/say-owning";

/**
 * What a new goal band made of owning: under it since its first day, or asked anew and not owned yet; empty: no band began while
 * it was filmed, or it is owned by films since.
 */
export function sayOwnedAnew(words: Words, history: TrackHistory, verdict: Pick<TrackVerdict, "ownedSince">): string {
  const began = history.judged.goals?.at(-1)?.from;
  if (began === undefined) return "";
  if (verdict.ownedSince === null) return words.say("goals.owned.not-anew", { day: sayDay(words, began, "full") });
  return verdict.ownedSince === began ? words.say("goals.owned.anew", { day: sayDay(words, began, "full") }) : "";
}

/** What owned means in the academy today, by its own rule or the built-in one. */
export function sayRuleOf(
  words: Words,
  { owningRules = [], today }: { readonly owningRules?: readonly DatedOwningRule[]; readonly today: string },
): string {
  const rule = owningRuleOn(owningRules, today) ?? policyOwning(POLICY);
  return words.say("owning.short", { rule: sayOwning(words, rule) });
}
