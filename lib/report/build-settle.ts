import type { Asking, AskingState } from "@/lib/domain/asking";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { planProgress } from "@/lib/verdict/plan-progress";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayLimit } from "@/lib/words/number-words";
import { sayIfNothing, sayIfReal, sayMeantSize, sayNoPlanShort, sayPlanShort, saySettle } from "@/lib/words/say-settle";
import { cameraCare } from "./camera-care";
import type { FundamentalSource } from "./fundamental-source";
import type { FundamentalPage } from "./page-model";
import { planOnOffer } from "./plan-on-offer";
import { provedAlone, saidVerdict } from "./said";

type SettlePart = NonNullable<FundamentalPage["settle"]>;
type Texts = Omit<SettlePart, "margin">;

/** A limit to be known later is worth saying where it is at most so much of the one known now. */
const WORTH_SAYING = 0.9;

/** What would settle an open track, what became of a plan that was taken, and what can be decided; null: not open. */
export function buildSettle(words: Words, source: FundamentalSource): FundamentalPage["settle"] {
  const { verdict, asking } = source;
  if (saidVerdict(verdict) !== "open") return null;
  const margin = words.say("fundamental-page.margin.settle");
  if (provedAlone(verdict) === "alone")
    return { margin, heading: words.say("settle.heading.listing"), texts: [words.say("settle.listing")], asks: [] };
  const base = planned(words, source);
  if (base === null) return null;
  return { margin, ...(asking === null ? base : decided(words, source, asking, base)) };
}

/** What films would tell: whatever is true, else if it is real, and if nothing has changed. */
function planned(words: Words, { verdict, history: { fundamental } }: FundamentalSource): Texts | null {
  const { settle, settleIfReal, settleIfNothing, usualCaptureSd } = verdict;
  if (settle === null) return null;
  const careOf = (plan: { readonly captureSd: number }) => cameraCare(plan, usualCaptureSd, fundamental);
  if (!("none" in settle))
    return {
      heading: words.say("settle.heading.plan"),
      texts: [saySettle(words, settle, careOf(settle))],
      asks: [ask(words, "planned")],
    };
  const texts: string[] = [];
  const real = settleIfReal !== null && !("none" in settleIfReal) ? settleIfReal : null;
  if (settleIfReal === null || settleIfNothing === null) texts.push(saySettle(words, settle, null));
  else {
    const care = careOf(real ?? settleIfNothing);
    texts.push(...sayIfReal(words, settleIfReal, fundamental.unit, settleIfNothing, care));
  }
  if (settleIfNothing !== null && settleIfNothing.changeBelow <= WORTH_SAYING * (verdict.changeBelow ?? Infinity))
    texts.push(sayIfNothing(words, settleIfNothing, fundamental.unit, careOf(settleIfNothing), verdict.changeBelow));
  if (settle.none !== "no-plan") return { heading: words.say(`settle.heading.none.${settle.none}`), texts, asks: [] };
  if (real === null) return { heading: words.say("settle.heading.none"), texts, asks: [ask(words, "stopped")] };
  return {
    heading: words.say("settle.heading.if-real"),
    texts,
    asks: [ask(words, "planned"), ask(words, "stopped")],
  };
}

function ask(words: Words, state: AskingState, key: string = state): SettlePart["asks"][number] {
  return { state, label: words.say(`settle.ask.${key}`), explains: words.say(`settle.ask.${key}.explains`) };
}

function decided(
  words: Words,
  { history, verdict }: FundamentalSource,
  { state, plan, day }: Asking,
  base: Texts,
): Texts {
  if (state === "stopped" || plan === null)
    return {
      heading: words.say("settle.heading.stopped", { day: sayDay(words, day, "full") }),
      texts: [words.say("settle.stopped")],
      asks: [ask(words, "asked", "again")],
    };
  const { come, short, state: progress } = planProgress(plan, history);
  const care = cameraCare(plan, verdict.usualCaptureSd, history.fundamental);
  const taken = {
    films: plan.sessions,
    swings: plan.swingsEach,
    day: sayDay(words, day, "full"),
    come,
    care: care === null ? "" : words.say(`settle.care.${care}`),
  };
  if (progress === "waiting")
    return {
      heading: words.say("settle.heading.waiting", taken),
      texts: [words.say("settle.waiting", taken), ...(short > 0 ? [words.say("settle.waiting.short", { short })] : [])],
      asks: [ask(words, "asked", "drop")],
    };
  return {
    heading: words.say("settle.heading.followed"),
    texts: [
      words.say("settle.followed", taken),
      ...bounded(words, verdict.changeBelow, plan.ifReal, history.fundamental),
      ...base.texts,
    ],
    asks: base.asks,
  };
}

/** What a followed plan leaves: below what any change lies, and whether that rules out the one that it was meant for. */
function bounded(
  words: Words,
  limit: number | null,
  meant: number | undefined,
  { unit }: Fundamental,
): readonly string[] {
  if (limit === null) return [];
  const below = words.say("settle.followed.below", { limit: sayLimit(words, limit, unit) });
  if (meant === undefined) return [below];
  const size = sayMeantSize(words, meant, unit);
  return [below, words.say(limit <= Math.abs(meant) ? "settle.followed.smaller" : "settle.followed.unknown", { size })];
}

/** The plan on offer, or why there is none, for one cell of a table. */
export function sayPlanCell(words: Words, verdict: TrackVerdict, fundamental: Fundamental): string {
  const offered = planOnOffer(verdict);
  if (offered !== null)
    return sayPlanShort(words, offered, fundamental.unit, cameraCare(offered, verdict.usualCaptureSd, fundamental));
  return verdict.settle !== null && "none" in verdict.settle ? sayNoPlanShort(words, verdict.settle) : "";
}

/** The same, with what was decided. */
export function saySettleCell(
  words: Words,
  track: { readonly history: TrackHistory; readonly verdict: TrackVerdict; readonly asking: Asking | null },
): string {
  const { history, verdict, asking } = track;
  const short = sayPlanCell(words, verdict, history.fundamental);
  if (asking === null || short === "") return short;
  const day = sayDay(words, asking.day, "short");
  if (asking.plan === null) return words.say("settle.stopped.short", { day });
  const { come, state } = planProgress(asking.plan, history);
  if (state === "waiting") return words.say("settle.waiting.short-cell", { films: asking.plan.sessions, come, day });
  return words.say("settle.followed.short", { plan: short });
}
