import type { Edges, Unit } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import { sayNumber, withUnit } from "@/lib/words/number-words";
import { valueTicks } from "./axis";
import type { TableModel } from "./basic-model";
import { beyondBand } from "./spread-axis";
import { valueRange } from "./value-range";

/** Rows to one side of a band, about. */
const STEPS = 5;

interface Line {
  readonly name: string;
  readonly placed: readonly { readonly level: number; readonly goal: Edges }[];
}

/** Equal steps at round numbers over a stretch, with the digits that their ends need. */
function stepsOver(low: number, high: number): { readonly step: number; readonly decimals: number } {
  const [first, second] = valueTicks(low, high, STEPS, (_value, decimals) => String(decimals));
  return { step: (second?.at ?? 1) - (first?.at ?? 0), decimals: Number(second?.label ?? 0) };
}

/** The dots of a chart counted in steps of how far they lie outside their bands, from below to above; levels in steps where no band is. */
export function spreadTable(words: Words, unit: Unit, lines: readonly Line[]): TableModel {
  const all = lines.flatMap((line) => line.placed);
  const isBare = all.every(({ goal: { low, high } }) => low === null && high === null);
  const values = all.map((each) => (isBare ? each.level : beyondBand(each)));
  const far = Math.max(...values.map(Math.abs)) || 1;
  const { low: least, high: most } = isBare ? valueRange(values) : { low: 0, high: far };
  const { step, decimals } = stepsOver(least, most);
  // Beyond a band a step holds its far end; a level's own step its near one. 0 is the band itself.
  const rowOf = (value: number): number => {
    const steps = value / step;
    if (isBare) return Math.floor(steps + 1e-9);
    return Math.sign(value) * Math.ceil(Math.abs(steps) - 1e-9);
  };
  const range = (from: number): string => {
    const [low, high] = [from * step, (from + 1) * step].map((value) => sayNumber(words, value, decimals));
    return withUnit(words, words.say("number.range", { low: low ?? "", high: high ?? "" }), unit);
  };
  const nameOf = (row: number): string => {
    if (isBare) return range(row);
    if (row === 0) return words.say("spread.table.within");
    return words.say(`spread.table.${row < 0 ? "below" : "above"}`, { range: range(Math.abs(row) - 1) });
  };
  const placed = lines.map((line) => line.placed.map((each) => rowOf(isBare ? each.level : beyondBand(each))));
  const rows = placed.flat();
  const [low, high] = [Math.min(...rows), Math.max(...rows)];
  const several = lines.length > 1 ? [words.say("spread.table.all")] : [];
  return {
    caption: words.say(`spread.table.caption.${isBare ? "level" : "distance"}`),
    columns: [
      { label: words.say(`spread.table.${isBare ? "level" : "where"}`), align: "start" },
      ...[...lines.map(({ name }) => name), ...several].map((label) => ({ label, align: "end" as const })),
    ],
    rows: Array.from({ length: high - low + 1 }, (_, at) => low + at).map((row) => {
      const counts = placed.map((of) => of.filter((each) => each === row).length);
      const sum = counts.reduce((total, each) => total + each, 0);
      return {
        cells: [nameOf(row), ...counts.map(String), ...(several.length === 0 ? [] : [String(sum)])],
        tone: sum === 0 ? ("quiet" as const) : ("plain" as const),
      };
    }),
  };
}
