import { type CalendarDay, daysBetween } from "@/lib/domain/calendar-day";
import type { ConsentStanding } from "@/lib/domain/consent";
import { KEEPING_THRESHOLDS } from "@/lib/domain/keeping-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";

/**
 * What is to be told of a consent to measure: that there is none in force and why, or that it ends soon. Empty: nothing is to
 * be done about it now.
 *
 * @param today the day of the standing
 */
export function consentNotices(
  words: Words,
  {
    alias,
    standing,
    today,
  }: { readonly alias: string; readonly standing: ConsentStanding; readonly today: CalendarDay },
): readonly string[] {
  if (standing.kind === "given") {
    const { until, ends } = standing;
    if (until === null || daysBetween(today, until) > KEEPING_THRESHOLDS.consentNoticeDays.value) return [];
    const day = sayDay(words, until, "full");
    return [words.say(ends === "own-age" ? "notice.consent.own-age-soon" : "notice.consent.ends", { alias, day })];
  }
  if (standing.kind === "none") return [words.say("notice.consent.none", { alias })];
  const day = sayDay(words, standing.kind === "not-yet" ? standing.from : standing.since, "full");
  return [words.say(`notice.consent.${standing.kind}`, { alias, day })];
}
