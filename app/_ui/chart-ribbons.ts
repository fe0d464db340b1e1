import type { ChartRibbon } from "@/lib/report/chart-model";
import type { PixelScale } from "./chart-scale";
import { PLAIN, textWidth } from "./text-width";

/** A drill or an event under the axis, in pixels. */
export interface RibbonPlace {
  readonly kind: "drill" | "event";
  readonly x: number;
  readonly width: number;
  readonly row: number;
  readonly label: string;
  readonly labelX: number;
  readonly anchor: "start" | "end";
}

const PAD = 8;

/** Sets ribbons in rows: the label inside, else on the right, else on the left of its ribbon; what would cover another opens a row. */
export function placeRibbons(
  drills: readonly ChartRibbon[],
  events: readonly ChartRibbon[],
  x: PixelScale,
  right: number,
): { readonly places: readonly RibbonPlace[]; readonly rows: number } {
  const rows: { readonly from: number; readonly to: number }[][] = [];
  const all = [
    ...drills.map((ribbon) => ({ ribbon, kind: "drill" as const })),
    ...events.map((ribbon) => ({ ribbon, kind: "event" as const })),
  ];
  const places = all.map(({ ribbon, kind }): RibbonPlace => {
    const start = x(ribbon.from);
    const width = Math.max(kind === "event" ? 2 : 4, x(ribbon.to) - start);
    const words = textWidth(ribbon.label, PLAIN);
    const inside = kind === "drill" && words + 2 * PAD <= width;
    const onRight = inside || start + width + PAD + words <= right;
    const labelX = inside ? start + PAD : onRight ? start + width + PAD : start - PAD;
    const from = onRight ? start : Math.max(0, labelX - words);
    const to = inside ? start + width : onRight ? labelX + words : start + width;
    const free = rows.findIndex((row) => row.every((taken) => to + PAD <= taken.from || taken.to + PAD <= from));
    const row = free < 0 ? rows.length : free;
    rows[row] = [...(rows[row] ?? []), { from, to }];
    const fits = onRight || labelX - words >= 0;
    return {
      kind,
      x: start,
      width,
      row,
      label: ribbon.label,
      labelX: fits ? labelX : 0,
      anchor: onRight || !fits ? "start" : "end",
    };
  });
  return { places, rows: rows.length };
}
