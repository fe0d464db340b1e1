import type { Fundamental } from "@/lib/domain/fundamental";
import type { RereadPair } from "@/lib/domain/reread";
import type { LevelError } from "@/lib/verdict/reader-error";
import type { Words } from "@/lib/words/catalogue";
import { sayNumber, saySigned, withUnit } from "@/lib/words/number-words";
import { valueTicks } from "./axis";
import { buildChartFiles } from "./chart-files";
import type { DifferencePlot } from "./reread-model";

/** Digits as they were read: none where all are whole. */
function decimalsOf(values: readonly number[]): number {
  return values.every((value) => Number.isInteger(value)) ? 0 : 1;
}

function range(values: readonly number[], least: number): { readonly from: number; readonly to: number } {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(least - (high - low), (high - low) * 0.1) / 2;
  return { from: low - room, to: high + room };
}

/**
 * Differences of two readings, second less first, by the mean of the two; null without a pair. No pair names its student or
 * film, so that a second reader who has still to read learns nothing.
 */
export function buildDifferencePlot(
  words: Words,
  { id, unit }: Fundamental,
  pairs: readonly RereadPair[],
  { pooled, level }: Pick<LevelError, "pooled" | "level">,
): DifferencePlot | null {
  if (pairs.length === 0) return null;
  const points = pairs
    .map(({ first, again }) => ({ first, again, x: (first + again) / 2, y: again - first }))
    .sort((a, b) => a.x - b.x || a.y - b.y);
  const bias = points.reduce((sum, point) => sum + point.y, 0) / points.length;
  // A difference holds the error of both readings: 1.96 x sqrt 2 of one.
  const reach = pooled.kind === "ok" ? 1.96 * Math.SQRT2 * pooled.value.typical : null;
  const limits = reach === null ? null : ([bias - reach, bias + reach] as const);
  const x = range(
    points.map((point) => point.x),
    2,
  );
  const y = range([0, ...points.map((point) => point.y), ...(limits ?? [])], 2);
  const decimals = decimalsOf(points.flatMap(({ first, again }) => [first, again]));
  const dots: { x: number; y: number; pairs: number }[] = [];
  for (const point of points) {
    const same = dots.at(-1);
    if (same?.x === point.x && same.y === point.y) same.pairs += 1;
    else dots.push({ x: point.x, y: point.y, pairs: 1 });
  }
  const unitName = words.say(`unit.${unit}.short`);
  const signed = (value: number): string => withUnit(words, saySigned(words, value, 1), unit);
  return {
    sentence: words.say("reread-of.plot.sentence", {
      pairs: points.length,
      low: limits === null ? "none" : signed(limits[0]),
      high: limits === null ? "" : signed(limits[1]),
      most: Math.max(...dots.map((dot) => dot.pairs)),
    }),
    xTitle: words.say("reread-of.plot.x", { unit: unitName }),
    yTitle: words.say("reread-of.plot.y", { unit: unitName }),
    x: { ...x, ticks: valueTicks(x.from, x.to, 5, (value, decimals) => sayNumber(words, value, decimals)) },
    y: { ...y, ticks: valueTicks(y.from, y.to, 5, (value, decimals) => saySigned(words, value, decimals)) },
    dots,
    bias: reach === null ? null : { at: bias, label: words.say("reread-of.plot.bias", { value: signed(bias) }) },
    limits,
    files: buildChartFiles(words, `/api/rereads/${id}/svg?level=${level}`, `rereads-${id}-${level}`),
    tableLabel: words.say("reread-of.plot.table"),
    table: {
      caption: words.say("reread-of.plot.caption"),
      columns: ["mean", "first", "again", "difference"].map((name) => ({
        label: words.say(`reread-of.plot.${name}`),
        align: "end" as const,
      })),
      rows: points.map((point) => ({
        cells: [
          withUnit(
            words,
            sayNumber(words, point.x, decimals === 0 && Number.isInteger(point.x) ? 0 : decimals + 1),
            unit,
          ),
          withUnit(words, sayNumber(words, point.first, decimals), unit),
          withUnit(words, sayNumber(words, point.again, decimals), unit),
          withUnit(words, saySigned(words, point.y, decimals), unit),
        ],
        tone: "plain" as const,
      })),
    },
  };
}
