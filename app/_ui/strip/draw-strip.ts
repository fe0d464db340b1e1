import type { Strip } from "@/lib/report/chart-model";
import { pixel } from "../chart-scale";

/** Of a strip in a table, in pixels. */
export const WIDTH = 94;
/** Of every strip, in pixels. */
export const STRIP_HEIGHT = 36;
const LOW = (STRIP_HEIGHT * 2) / 3;
const HIGH = STRIP_HEIGHT / 3;
/** Pixels kept free behind the last day for a verdict's shape; the band runs on under it. */
const SHAPE = 20;
/** A band's ends lie beyond the strip, so that its line is drawn along its edges alone. */
const BEYOND = 2;

const DIRECTIONS = ["toward", "away", "neither"] as const;
const MARKS = ["used", "aided", "set-aside"] as const;

/** One path of a strip: its class, and where it runs. */
type Drawn = readonly [style: string, d: string];

/**
 * A strip as it is drawn, in one text: a path for each kind of ink, `used M2 18h0|level M2 18H30`. A roster's page has a
 * thousand strips, and a text is sent to a browser at a small part of the work that as many lists would be.
 */
export type DrawnStrip = string;

/** The paths of a drawn strip in their order. */
export function pathsOf(drawn: DrawnStrip): readonly Drawn[] {
  if (drawn === "") return [];
  return drawn.split("|").map((path): Drawn => {
    const at = path.indexOf(" ");
    return [path.slice(0, at), path.slice(at + 1)];
  });
}

function joined(paths: readonly Drawn[]): DrawnStrip {
  return paths.flatMap(([style, d]) => (d === "" ? [] : [`${style} ${d}`])).join("|");
}

/** Left open where no edge is: a path is filled as if it were closed, and its line isn't. */
function bandOf(edges: Strip["edges"], width: number): readonly Drawn[] {
  if (edges === "none") return [];
  const [from, to] = [-BEYOND, width + BEYOND];
  if (edges === "low") return [["band", `M${from} 0V${LOW}H${to}V0`]];
  if (edges === "high") return [["band", `M${from} ${STRIP_HEIGHT}V${HIGH}H${to}V${STRIP_HEIGHT}`]];
  return [["band", `M${from} ${HIGH}H${to}V${LOW}H${from}`]];
}

/** What stands behind the last day: nothing, room for a verdict's shape, or where the level lies now and its doubt. */
export type StripEnd = "nothing" | "shape" | "level";

/** In pixels. */
export type StripWidth = 94 | 200 | 300;

/** A track as high as a line of text; the goal band always lies at the same height. */
export function drawStrip(model: Strip, width: StripWidth = WIDTH, end: StripEnd = "nothing"): DrawnStrip {
  const days = end === "nothing" ? width : width - SHAPE;
  const x = (part: number) => pixel(2 + part * (days - 4));
  const y = (part: number) => pixel(STRIP_HEIGHT * (1 - part));
  const { now } = model;
  const at = width - SHAPE / 2;
  const mark = end === "level" && now !== null ? `M${at} ${y(now.low)}V${y(now.high)}M${at - 4} ${y(now.y)}h8` : "";
  const wedge = (change: Strip["changes"][number]): string => {
    const tip = x(Math.max(change.x1, change.x0 + 0.04));
    const foot = y(change.y1);
    return `M${x(change.x0)} ${y(change.y0)}L${tip} ${pixel(foot - 4)}V${pixel(foot + 4)}Z`;
  };
  const changes = DIRECTIONS.map((each): Drawn => {
    const mine = model.changes.filter(({ direction }) => direction === each);
    return [each, mine.map(wedge).join("")];
  });
  const levels = model.levels.map((level) => `M${x(level.x0)} ${y(level.y)}H${x(Math.max(level.x1, level.x0 + 0.02))}`);
  const dots = MARKS.flatMap((each): readonly Drawn[] => {
    const places = model.dots.filter((dot) => dot.mark === each).map((dot) => `M${x(dot.x)} ${y(dot.y)}h0`);
    const d = places.join("");
    return each === "used"
      ? [[each, d]]
      : [
          [each, d],
          [`${each}-hole`, d],
        ];
  });
  // The level now has the ink of a level; on the edge, where it isn't known, it is quiet and drawn by itself.
  const isQuiet = now?.place === "edge";
  return joined([
    ...bandOf(model.edges, width),
    ...changes,
    ["level", levels.join("") + (isQuiet ? "" : mark)],
    ...dots,
    ["edgy", isQuiet ? mark : ""],
  ]);
}

/** The band of a row where nothing is measured, with a dash in it. */
export const EMPTY_STRIP: DrawnStrip = joined([
  ...bandOf("both", WIDTH),
  ["none", `M${(WIDTH - SHAPE) / 2 - 3} ${STRIP_HEIGHT / 2}h6`],
]);
