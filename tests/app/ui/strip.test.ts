import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { drawStrip, pathsOf, type StripEnd } from "@/app/_ui/strip/draw-strip";
import { Strip } from "@/app/_ui/strip/strip";
import type { Strip as StripModel } from "@/lib/report/chart-model";
import { STRIP } from "./made-strip";

const strip = (model: StripModel, end?: StripEnd) =>
  renderToStaticMarkup(createElement(Strip, { drawn: drawStrip(model, 94, end), label: model.summary }));

describe("a strip", () => {
  test("says its summary, and is 94 by 36 with the band from 12 to 24, whose ends lie beyond it", () => {
    const markup = strip(STRIP);
    expect(markup).toContain(`role="img" aria-label="${STRIP.summary}"`);
    expect(markup).toMatch(/width="94" height="36"/);
    expect(markup).toMatch(/<path class="[^"]*band[^"]*" d="M-2 12H96V24H-2"/);
  });

  test("draws a session set aside apart from the judged ones, one dot a session: two judged, one aside", () => {
    const markup = strip(STRIP);
    expect(markup).toMatch(/<path class="[^"]*used[^"]*" d="M2 18h0M92 3.6h0"/);
    expect(markup).toMatch(
      /set-aside[^"]*" d="M47 7.2h0"><\/path><path class="[^"]*set-aside-hole[^"]*" d="M47 7.2h0"/,
    );
  });

  test("keeps 20 px behind the last day for a shape: 94 - 20 - 2 = 72, and the band runs on", () => {
    const markup = strip(STRIP, "shape");
    expect(markup).toContain("M72 3.6h0");
    expect(markup).toContain("M-2 12H96V24H-2");
  });

  test("a band with one edge runs to the other side and has its line along that edge alone, being open there", () => {
    expect(strip({ ...STRIP, edges: "low" })).toContain('d="M-2 0V24H96V0"');
    expect(strip({ ...STRIP, edges: "high" })).toContain('d="M-2 36V12H96V36"');
    expect(strip({ ...STRIP, edges: "none" })).not.toContain("band");
  });

  test("changes of one direction are one path, and no ink is drawn twice", () => {
    const away = { x0: 0.7, x1: 0.8, y0: 0.9, y1: 0.5, direction: "away" as const };
    const drawn = drawStrip({ ...STRIP, changes: [...STRIP.changes, away, { ...away, direction: "toward" }] });
    const styles = pathsOf(drawn).map(([style]) => style);
    expect(styles).toEqual(["band", "toward", "away", "level", "used", "set-aside", "set-aside-hole"]);
    expect(
      pathsOf(drawn)
        .find(([style]) => style === "away")?.[1]
        .match(/Z/g),
    ).toHaveLength(2);
    expect(pathsOf("")).toEqual([]);
  });

  test("where it is now has a level's ink and one path with it; on the edge, unknown, quiet ink and a path of its own", () => {
    const now = { low: 0.25, y: 0.5, high: 0.75, place: "settled" as const };
    expect(strip({ ...STRIP, now }, "level")).toMatch(/level[^"]*" d="M2 18H30M84 27V9M80 18h8"/);
    const edge = strip({ ...STRIP, now: { ...now, place: "edge" } }, "level");
    expect(edge).toMatch(/level[^"]*" d="M2 18H30"/);
    expect(edge).toMatch(/edgy[^"]*" d="M84 27V9M80 18h8"/);
    expect(strip({ ...STRIP, now })).not.toContain("M84");
  });
});
