import type { Asking, AskingState } from "@/lib/domain/asking";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { planProgress } from "@/lib/verdict/plan-progress";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayLimit } from "@/lib/words/number-words";
import { saySettle, saySettleShort } from "@/lib/words/say-verdict";
import type { FundamentalSource } from "./fundamental-source";
import type { FundamentalPage } from "./page-model";
import { provedAlone, saidVerdict } from "./said";

type SettlePart = NonNullable<FundamentalPage["settle"]>;

/** The sd of the camera error that is usual in a track: the median over its judged sessions. */
export function usualCaptureSd(history: TrackHistory): number {
  const sds = history.sessions
    .filter((entry) => entry.apart === null)
    .map((entry) => entry.captureSd)
    .sort((a, b) => a - b);
  return sds[Math.floor(sds.length / 2)] ?? history.fundamental.cameraSdUnknown;
}

/** What would settle an open track, what became of a plan that was taken, and what can be decided; null: not open. */
export function buildSettle(words: Words, source: FundamentalSource): FundamentalPage["settle"] {
  const { verdict, history, asking } = source;
  if (saidVerdict(verdict) !== "open") return null;
  const margin = words.say("fundamental-page.margin.settle");
  if (provedAlone(verdict) === "alone")
    return { margin, heading: words.say("settle.heading.listing"), texts: [words.say("settle.listing")], asks: [] };
  if (verdict.settle === null) return null;
  const none = "none" in verdict.settle ? verdict.settle.none : null;
  const base: Omit<SettlePart, "margin"> = {
    heading: words.say(none === null ? "settle.heading.plan" : "settle.heading.none"),
    texts: [saySettle(words, verdict.settle, usualCaptureSd(history))],
    asks: none === "first-look" ? [] : [ask(words, none === null ? "planned" : "stopped")],
  };
  return { margin, ...(asking === null ? base : decided(words, source, asking, base)) };
}

function ask(words: Words, state: AskingState, key: string = state): SettlePart["asks"][number] {
  return { state, label: words.say(`settle.ask.${key}`), explains: words.say(`settle.ask.${key}.explains`) };
}

function decided(
  words: Words,
  { history, verdict }: FundamentalSource,
  { state, plan, day }: Asking,
  base: Omit<SettlePart, "margin">,
): Omit<SettlePart, "margin"> {
  if (state === "stopped" || plan === null)
    return {
      heading: words.say("settle.heading.stopped", { day: sayDay(words, day, "full") }),
      texts: [words.say("settle.stopped")],
      asks: [ask(words, "asked", "again")],
    };
  const { come, short, state: progress } = planProgress(plan, history);
  const taken = { films: plan.sessions, swings: plan.swingsEach, day: sayDay(words, day, "full"), come };
  if (progress === "waiting")
    return {
      heading: words.say("settle.heading.waiting", taken),
      texts: [words.say("settle.waiting", taken), ...(short > 0 ? [words.say("settle.waiting.short", { short })] : [])],
      asks: [ask(words, "asked", "drop")],
    };
  const limit = verdict.changeBelow;
  return {
    heading: words.say("settle.heading.followed"),
    texts: [
      words.say("settle.followed", {
        ...taken,
        limit: limit === null ? "" : sayLimit(words, limit, history.fundamental.unit),
      }),
      ...base.texts,
    ],
    asks: base.asks,
  };
}

/** The same for one cell of a table. */
export function saySettleCell(
  words: Words,
  track: { readonly history: TrackHistory; readonly verdict: TrackVerdict; readonly asking: Asking | null },
): string {
  const { history, verdict, asking } = track;
  if (verdict.settle === null) return "";
  const short = saySettleShort(words, verdict.settle, usualCaptureSd(history));
  if (asking === null) return short;
  const day = sayDay(words, asking.day, "short");
  if (asking.plan === null) return words.say("settle.stopped.short", { day });
  const { come, state } = planProgress(asking.plan, history);
  if (state === "waiting") return words.say("settle.waiting.short-cell", { films: asking.plan.sessions, come, day });
  return words.say("settle.followed.short", { plan: short });
}
