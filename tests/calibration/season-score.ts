import type { NoiseModel } from "@/lib/stats/noise-model";
import { trend } from "@/lib/stats/trend";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { judgedSeries, stretchOf } from "@/lib/verdict/judged-series";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY, type Policy } from "@/lib/verdict/policy";
import type { SimulatedTrack } from "./population";

/** An interval held against the truth. */
export interface Covered {
  readonly in80: boolean;
  readonly in95: boolean;
  /** Width of the 95 of 100 interval: of a level in U, of a share as it is. */
  readonly width95: number;
}

/** A stretch of sessions held against the first session of a true step. */
export interface StretchScore {
  readonly holds80: boolean;
  readonly holds95: boolean;
  readonly size80: number;
}

/** The interval of the trend of an unchanged season's first sessions, held against no trend at all. */
export interface TrendScore {
  readonly sessions: number;
  readonly covers: boolean;
  /** Width of the interval in U per 100 days. */
  readonly width: number;
}

/** What the verdicts of one season were worth. */
export interface SeasonScore {
  /** Ever called a change where there is none, or before it, or the wrong way first. */
  readonly falseWord: boolean;
  /** Sessions from the change's first one, itself counted, to the first right word; null: never said. */
  readonly foundAfter: number | null;
  /** Whether the right word was taken back at a later look while the change still held; null: never said. */
  readonly takenBack: boolean | null;
  /** Whether a loss of what had been gained was called so in the end; null: nothing was lost after a right word. */
  readonly lossSeen: boolean | null;
  readonly steadyAtEnd: boolean;
  readonly steadyBy12: boolean;
  readonly steadyBy20: boolean;
  /** Ever called holding while the level was off its old place by the smallest worthwhile change or more. */
  readonly steadyWrong: boolean;
  readonly level: Covered | null;
  /** Null without a goal, or where the true share has no closed form. */
  readonly share: Covered | null;
  /** Null: there is no true step, or none was said. */
  readonly stretch: StretchScore | null;
  readonly trends: readonly TrendScore[];
}

/** Lengths of season at which the trend's interval is held against the truth. */
export const TREND_SESSIONS = [8, 12, 20, 40] as const;

/** The policy in force, without the search for a plan, which no score asks for. */
export const WITHOUT_PLANS: Policy = { ...POLICY, settleSessions: 1 };

interface TrueInterval {
  readonly low80: number;
  readonly high80: number;
  readonly low95: number;
  readonly high95: number;
}

function covered(found: TrueInterval | null, truth: number | null, unit: number): Covered | null {
  if (found === null || truth === null) return null;
  return {
    in80: found.low80 <= truth && truth <= found.high80,
    in95: found.low95 <= truth && truth <= found.high95,
    width95: (found.high95 - found.low95) / unit,
  };
}

/** Which word is right at each session: that of the change while half of it or more is there, else none. */
function rightWords({ levels, changeAt }: SimulatedTrack): readonly ("gain" | "slip" | null)[] {
  const first = levels[0] as number;
  const farthest = levels.reduce((far, level) => (Math.abs(level - first) > Math.abs(far) ? level - first : far), 0);
  return levels.map((level, i) => {
    if (changeAt === null || i < changeAt || (level - first) / farthest < 0.5) return null;
    return farthest > 0 ? "gain" : "slip";
  });
}

function trendScores(simulated: SimulatedTrack, noise: NoiseModel): readonly TrendScore[] {
  const { track, unit, levels } = simulated;
  if (levels.some((level) => level !== levels[0])) return [];
  const { series } = judgedSeries(track, POLICY);
  return TREND_SESSIONS.flatMap((sessions) => {
    if (sessions > levels.length) return [];
    const found = trend(stretchOf(series, 0, sessions - 1), noise);
    if (found.kind !== "ok") return [];
    const { low95, high95 } = found.value;
    return [{ sessions, covers: low95 <= 0 && 0 <= high95, width: ((high95 - low95) * 100) / unit }];
  });
}

/** Judges one season as the pages do, look after look, and scores it against its truth. */
export function scoreSeason(simulated: SimulatedTrack, noise: NoiseModel): SeasonScore {
  const { track, changeAt, levels, unit } = simulated;
  const { verdict } = judgeTrack(track, noiseAlways(noise), WITHOUT_PLANS, "looks");
  const words = (verdict.looks ?? []).map((look) => look.verdict);
  const right = rightWords(simulated);
  const first = words.findIndex((word) => word === "gain" || word === "slip");
  const direction = right.find((word) => word !== null) ?? null;
  const early = first >= 0 && (changeAt === null || first < changeAt || words[first] !== direction);
  const found = words.findIndex((word, i) => changeAt !== null && i >= changeAt && word === direction);
  const lostAt = found < 0 ? -1 : right.findIndex((word, i) => i > found && word === null);
  const held = found < 0 ? [] : words.slice(found, lostAt < 0 ? undefined : lostAt);
  const change = verdict.changes[0];
  const isStep = changeAt !== null && levels[changeAt] !== levels[0] && levels[changeAt] === levels[changeAt + 1];
  const off = (i: number): boolean =>
    Math.abs((levels[i] as number) - (levels[0] as number)) >= POLICY.smallestWorthwhile * unit - 1e-9;
  return {
    falseWord: early,
    foundAfter: found < 0 || changeAt === null ? null : found - changeAt + 1,
    takenBack: found < 0 ? null : held.some((word) => word !== direction),
    lossSeen: lostAt < 0 ? null : words.at(-1) !== direction,
    steadyAtEnd: words.at(-1) === "steady",
    steadyBy12: words.slice(0, 12).includes("steady"),
    steadyBy20: words.slice(0, 20).includes("steady"),
    steadyWrong: words.some((word, i) => word === "steady" && off(i)),
    level: covered(verdict.levelNow, levels.at(-1) as number, unit),
    share: covered(verdict.bandShare, simulated.shareInside, 1),
    stretch:
      isStep && change?.set80 && change.set95
        ? {
            holds80: change.set80.includes(changeAt),
            holds95: change.set95.includes(changeAt),
            size80: change.set80.length,
          }
        : null,
    trends: trendScores(simulated, noise),
  };
}
