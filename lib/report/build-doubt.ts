import { checkedCaptureSd } from "@/lib/capture/misplacement";
import type { SquarePlan } from "@/lib/verdict/square-plan";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { decimalsFor, sayNumber, withUnit } from "@/lib/words/number-words";
import { buildSharper } from "./build-sharper";
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
    return withUnit(words, words.say("number.half-only", { half: sayNumber(words, width, decimalsFor(width)) }), unit);
  };
  const shares = roundTo100(squares, total);
  return {
    margin: words.say("fundamental-page.margin.doubt"),
    heading: words.say("doubt.heading", { half: half(Math.sqrt(total)), swings }),
    parts: (Object.keys(PATTERNS) as Part[]).map((part) => ({
      name: words.say(`doubt.${part}`),
      share: squares[part] / total,
      shareLabel: words.say("doubt.share", { share: sayNumber(words, shares[part], 0) }),
      sizeLabel: words.say(`doubt.${part}.size`, { half: half(budget[part]) }),
      pattern: PATTERNS[part],
    })),
    sharper: buildSharper(words, history.fundamental, budget),
    square: [saySquare(words, history, total - squares.camera), saySquarePlan(words, squarePlan)].filter(
      (text) => text !== "",
    ),
  };
}

/**
 * How many films of a checked phone would tell as much as those at hand: each film tells as much as one over the variance of
 * its mean, so that one which a wrong phone spoils tells next to nothing and takes nothing from the others.
 *
 * @param restVariance variance of a session's mean without its camera part, in the unit squared
 */
function saySquare(words: Words, { fundamental, sessions }: TrackHistory, restVariance: number): string {
  const used = sessions.filter((entry) => entry.apart === null);
  const checked = restVariance + checkedCaptureSd(fundamental) ** 2;
  const told = used.reduce((sum, { captureSd }) => sum + checked / (restVariance + captureSd ** 2), 0);
  const enough = Math.min(used.length, Math.ceil(told));
  if (enough >= used.length) return words.say("doubt.square.as-checked");
  return words.say("doubt.square", { have: used.length, as: enough, fewer: used.length - enough });
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
