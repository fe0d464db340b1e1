import { owningRuleOn } from "@/lib/domain/owning-rule";
import { DRILL_THRESHOLDS } from "@/lib/verdict/drill-thresholds";
import { POLICY } from "@/lib/verdict/policy";
import type { Words } from "@/lib/words/catalogue";
import { sayRetention } from "@/lib/words/say-retention";
import { type RetentionSource, retentionOf } from "./retention-of";

/** Whether a proved gain stays without practice, in a sentence, with the reason for asking; null: no gain is proved. */
export function buildStays(
  words: Words,
  source: Omit<RetentionSource, "rest"> & { readonly today: string },
): { readonly sentence: string; readonly detail: readonly string[] } | null {
  const rule = owningRuleOn(source.history.judged.owning ?? [], source.today);
  const rest = Math.max(1, rule?.restDays ?? POLICY.ownedRest);
  const retention = retentionOf({ ...source, rest });
  if (retention === null) return null;
  return {
    sentence: sayRetention(words, retention, rest),
    detail: [words.say("retention.reason", { rest, times: DRILL_THRESHOLDS.retentionTimes.value })],
  };
}
