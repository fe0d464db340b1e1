import type { Interval } from "@/lib/domain/track-verdict";
import type { Words } from "@/lib/words/catalogue";
import { sayBand, sayNumber, withUnit } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { buildChartFiles } from "./chart-files";
import { axisTicks, type SpreadAxis, spreadAxis } from "./spread-axis";
import { stackLines } from "./spread-lanes";
import type { SpreadChart, SpreadPlace } from "./spread-model";
import { type SpreadSource, tracksOf } from "./spread-source";
import { spreadTable } from "./spread-table";
import type { TrackSummary } from "./track-summary";

/** A track that has a level. */
export interface PlacedTrack {
  readonly track: TrackSummary;
  readonly level: number;
  readonly interval: Interval;
  readonly goal: TrackSummary["goal"];
  readonly place: SpreadPlace;
}

/** The tracks that can be drawn on one axis: all with a level, and a band where any of them has one. */
export function placedTracks(tracks: readonly TrackSummary[]): readonly PlacedTrack[] {
  const levels = tracks.flatMap((track): PlacedTrack[] => {
    const { levelNow: interval, position } = track.verdict;
    return interval === null
      ? []
      : [{ track, interval, level: interval.estimate, goal: track.goal, place: position ?? "none" }];
  });
  const banded = levels.filter(({ place }) => place !== "none");
  return banded.length > 0 ? banded : levels;
}

/** Lines of dots: a group of clubs each where several may be told apart, and what is left over. */
function linesOf(words: Words, source: SpreadSource, placed: readonly PlacedTrack[]) {
  const clubs = source.group === null ? (source.groups?.told ?? []).filter(({ club }) => club !== null) : [];
  const lines = clubs.map((told) => ({
    name: source.sayClubs(told.club ?? ""),
    placed: placed.filter(({ track }) => tracksOf([track], told).length > 0),
  }));
  const rest = placed.filter((each) => !lines.some((line) => line.placed.includes(each)));
  const all = [
    ...lines.filter((line) => line.placed.length > 0),
    ...(rest.length === 0
      ? []
      : [{ name: words.say(lines.length === 0 ? "spread.line.all" : "spread.line.rest"), placed: rest }]),
  ];
  const [only] = all;
  return all.length === 1 && only !== undefined && source.group !== null
    ? [{ ...only, name: source.group.label }]
    : all;
}

function edgesOf(words: Words, { fundamental }: SpreadSource, { kind, band }: SpreadAxis): SpreadChart["edges"] {
  return (["low", "high"] as const).flatMap((side) => {
    const at = band[side];
    if (at === null) return [];
    const value = withUnit(words, sayNumber(words, at, Number.isInteger(at) ? 0 : 1), fundamental.unit);
    return [{ at, side, label: kind === "same" ? value : words.say(`spread.edge.${side}`) }];
  });
}

/** The words for a band that all share, or that there is none such. */
export function sayAxis(words: Words, { fundamental }: SpreadSource, { kind, band }: SpreadAxis): string {
  return words.say(`spread.bands.${kind}`, { band: kind === "same" ? sayBand(words, band, fundamental.unit) : "" });
}

/** The band of a line whose dots share one, where not all of a drawing do. */
function sayOwnBand(
  words: Words,
  { fundamental }: SpreadSource,
  { kind }: SpreadAxis,
  placed: readonly PlacedTrack[],
): string {
  const [first] = placed;
  const isShared = placed.every(({ goal }) => goal.low === first?.goal.low && goal.high === first.goal.high);
  return kind === "own" && first !== undefined && isShared ? sayBand(words, first.goal, fundamental.unit) : "none";
}

/** The latest levels of a fundamental as dots on one axis, and the same counted in a table; null: there is no level. */
export function spreadChart(words: Words, source: SpreadSource, placed: readonly PlacedTrack[]): SpreadChart | null {
  if (placed.length === 0) return null;
  const { fundamental, group } = source;
  const axis = spreadAxis(placed);
  const lines = linesOf(words, source, placed);
  const stretch = axisTicks(
    words,
    axis,
    placed.map((each) => axis.placeOf(each)),
  );
  const count = (of: readonly PlacedTrack[], place: SpreadPlace): number =>
    of.filter((each) => each.place === place).length;
  const stacked = stackLines(
    lines.map((line) => line.placed.map((each) => ({ at: axis.placeOf(each), place: each.place }))),
    stretch,
  );
  const name = sayFundamental(words, fundamental);
  const bare = axis.kind === "none" ? "yes" : "no";
  const places = (["inside", "edge", "outside", "none"] as const).filter((place) => count(placed, place) > 0);
  return {
    title: words.say("spread.chart.title", { name }),
    sentence: words.say("spread.chart.sentence", {
      ...{ name, levels: placed.length, lines: lines.length, bare },
      ...{ inside: count(placed, "inside"), edge: count(placed, "edge"), outside: count(placed, "outside") },
    }),
    axisTitle: words.say(`spread.axis.${axis.kind === "own" ? "distance" : "level"}`, {
      unit: words.say(`unit.${fundamental.unit}.short`),
    }),
    axis: stretch,
    band: axis.kind === "none" ? null : axis.band,
    edges: axis.kind === "none" ? [] : edgesOf(words, source, axis),
    columns: stacked.columns,
    strips: lines.map((line, at) => ({
      ...{ dots: stacked.lines[at]?.dots ?? [], lanes: stacked.lines[at]?.lanes ?? 0 },
      label: words.say("spread.line", {
        ...{ name: line.name, levels: line.placed.length, inside: count(line.placed, "inside"), bare },
        band: sayOwnBand(words, source, axis, line.placed),
      }),
    })),
    legend: places.map((place) => ({ place, label: words.say(`spread.legend.${place}`) })),
    files: buildChartFiles(
      words,
      `/api/academy/${encodeURIComponent(fundamental.id)}/svg?of=${encodeURIComponent(group?.id ?? "")}`,
      `academy-${fundamental.id}`,
    ),
    tableLabel: words.say("spread.table.open"),
    table: spreadTable(words, fundamental.unit, lines),
  };
}
