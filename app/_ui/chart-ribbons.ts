import type { ChartRibbon } from "@/lib/report/chart-model";
import type { PixelScale } from "./chart-scale";
import { PLAIN, textWidth } from "./text-width";

/** A drill or an event under the axis, in pixels. */
export interface RibbonPlace {
  readonly kind: "drill" | "event";
  readonly x: number;
  readonly width: number;
  /** Whether it goes on past where it is drawn. */
  readonly end: "closed" | "open";
  readonly row: number;
  readonly label: string;
  /** The ribbon's own row, or the next one where the label has no room beside it. */
  readonly labelRow: number;
  readonly labelX: number;
  readonly anchor: "start" | "end";
}

const PAD = 8;

/** Pixels that an open end takes at least, so that its point is seen. */
const OPEN = 10;

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** What a line of this width holds of a label. */
function cut(label: string, width: number): string {
  if (textWidth(label, PLAIN) <= width) return label;
  const letters = Math.floor((label.length * width) / textWidth(label, PLAIN)) - 1;
  return `${label.slice(0, Math.max(1, letters)).trimEnd()}…`;
}

/** Sets ribbons in rows: the label inside, else on the right, else on the left of its ribbon, else beneath; what would cover another opens a row. */
export function placeRibbons(
  drills: readonly ChartRibbon[],
  events: readonly ChartRibbon[],
  x: PixelScale,
  right: number,
): { readonly places: readonly RibbonPlace[]; readonly rows: number } {
  const rows: Stretch[][] = [];
  const isFree = (row: number, taken: Stretch): boolean =>
    (rows[row] ?? []).every((other) => taken.to + PAD <= other.from || other.to + PAD <= taken.from);
  const take = (wanted: readonly Stretch[]): number => {
    let row = 0;
    while (!wanted.every((stretch, down) => isFree(row + down, stretch))) row += 1;
    wanted.forEach((stretch, down) => {
      rows[row + down] = [...(rows[row + down] ?? []), stretch];
    });
    return row;
  };
  const all = [
    ...drills.map((ribbon) => ({ ribbon, kind: "drill" as const })),
    ...events.map((ribbon) => ({ ribbon, kind: "event" as const })),
  ];
  const places = all.map(({ ribbon, kind }): RibbonPlace => {
    const label = cut(ribbon.label, right);
    const from = x(ribbon.from);
    const end: RibbonPlace["end"] = ribbon.end ?? "closed";
    const width = Math.max(end === "open" ? OPEN : kind === "event" ? 2 : 4, x(ribbon.to) - from);
    const to = from + width;
    const words = textWidth(label, PLAIN);
    const place = { kind, x: from, width, end, label };
    if (kind === "drill" && words + 2 * PAD <= width) {
      const row = take([{ from, to }]);
      return { ...place, row, labelRow: row, labelX: from + PAD, anchor: "start" };
    }
    if (to + PAD + words <= right) {
      const row = take([{ from, to: to + PAD + words }]);
      return { ...place, row, labelRow: row, labelX: to + PAD, anchor: "start" };
    }
    if (from - PAD - words >= 0) {
      const row = take([{ from: from - PAD - words, to }]);
      return { ...place, row, labelRow: row, labelX: from - PAD, anchor: "end" };
    }
    const start = Math.max(0, Math.min(from, right - words));
    const row = take([
      { from, to },
      { from: start, to: start + words },
    ]);
    return { ...place, row, labelRow: row + 1, labelX: start, anchor: "start" };
  });
  return { places, rows: rows.length };
}
