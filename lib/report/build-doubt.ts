import { checkedCaptureSd } from "@/lib/capture/misplacement";
import type { SquarePlan } from "@/lib/verdict/square-plan";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { decimalsFor, sayNumber, withUnit } from "@/lib/words/number-words";
import type { FundamentalSource } from "./fundamental-source";
import type { FundamentalPage } from "./page-model";

const PATTERNS = { swing: "solid", day: "mid", camera: "hatch", reader: "light" } as const;
type Part = keyof typeof PATTERNS;

/**
 * Where the doubt of one session of five swings comes from. Parts add up as squares; shares are rounded so that they add
 * up to 100.
 */
export function buildDoubt(
  words: Words,
  { history, verdict, squarePlan }: Pick<FundamentalSource, "history" | "verdict" | "squarePlan">,
): FundamentalPage["doubt"] {
  const budget = verdict.errorBudget;
  if (budget === null) return null;
  const swings = 5;
  const squares: Record<Part, number> = {
    swing: budget.swing ** 2 / swings,
    day: budget.day ** 2,
    camera: budget.camera ** 2,
    reader: budget.reader ** 2 / swings,
  };
  const total = Object.values(squares).reduce((sum, square) => sum + square, 0);
  if (!(total > 0)) return null;
  const unit = history.fundamental.unit;
  const half = (sd: number): string => {
    const width = 1.96 * sd;
    return withUnit(words, words.say("number.half-only", { half: sayNumber(width, decimalsFor(width)) }), unit);
  };
  const shares = roundTo100(squares, total);
  return {
    margin: words.say("fundamental-page.margin.doubt"),
    heading: words.say("doubt.heading", { half: half(Math.sqrt(total)), swings }),
    parts: (Object.keys(PATTERNS) as Part[]).map((part) => ({
      name: words.say(`doubt.${part}`),
      share: squares[part] / total,
      shareLabel: words.say("doubt.share", { share: sayNumber(shares[part], 0) }),
      sizeLabel: words.say(`doubt.${part}.size`, { half: half(budget[part]) }),
      pattern: PATTERNS[part],
    })),
    square: [saySquare(words, history, budget.camera, total), saySquarePlan(words, squarePlan)].filter(
      (text) => text !== "",
    ),
  };
}

/** A part of the camera up to so many times what a check leaves is as good as checked. */
const AS_CHECKED = 1.1;

/**
 * How many films of a checked phone would tell as much as those at hand: information goes with the sessions over the variance
 * of a session's mean.
 */
function saySquare(words: Words, history: TrackHistory, cameraSd: number, total: number): string {
  const checked = checkedCaptureSd(history.fundamental);
  if (cameraSd <= AS_CHECKED * checked) return words.say("doubt.square.as-checked");
  const have = history.sessions.filter((entry) => entry.apart === null).length;
  const enough = Math.ceil((have * (total - cameraSd ** 2 + checked ** 2)) / total);
  if (enough >= have) return "";
  return words.say("doubt.square", { have, as: enough, fewer: have - enough });
}

/** Whole hundredths by largest remainder. */
function roundTo100(squares: Record<Part, number>, total: number): Record<Part, number> {
  const exact = (Object.keys(squares) as Part[]).map((part) => ({ part, value: (squares[part] / total) * 100 }));
  const rounded = Object.fromEntries(exact.map(({ part, value }) => [part, Math.floor(value)])) as Record<Part, number>;
  let left = 100 - Object.values(rounded).reduce((sum, value) => sum + value, 0);
  for (const { part } of [...exact].sort((a, b) => (b.value % 1) - (a.value % 1))) {
    if (left-- <= 0) break;
    rounded[part] += 1;
  }
  return rounded;
}

/** What a phone checked from now on would save on the way to an answer; empty: nothing. */
function saySquarePlan(words: Words, plan: SquarePlan | null): string {
  if (plan === null) return "";
  const { asItIs, checked, question } = plan;
  if (asItIs === null) return words.say(`doubt.plan.only.${question}`, { checked });
  return words.say(`doubt.plan.fewer.${question}`, { checked, fewer: asItIs - checked });
}
