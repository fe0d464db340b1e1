import type { SpreadChart as Model, SpreadPlace, SpreadStrip } from "@/lib/report/spread-model";
import { SaveChart } from "../chart-file/save-chart";
import { pixel, pixelScale } from "../chart-scale";
import { PLAIN, textWidth } from "../text-width";
import forms from "../two-forms.module.css";
import styles from "./spread-chart.module.css";

const SIZES = { wide: 640, phone: 320 } as const;

/** Pixels: air at the ends, the widest dot, a line of words, and what stands above the dots of a line. */
const SIDE = 10;
const WIDEST = 11;
const LINE = 20;
const ABOVE = 12;
const GAP = 14;

type Form = keyof typeof SIZES;

const disc = (x: number, y: number, r: number): string =>
  `M${pixel(x - r)} ${pixel(y)}a${r} ${r} 0 1 0 ${pixel(2 * r)} 0a${r} ${r} 0 1 0 ${pixel(-2 * r)} 0Z`;

const SHAPES = {
  inside: disc,
  ring: disc,
  half: (x: number, y: number, r: number) => `M${pixel(x)} ${pixel(y - r)}a${r} ${r} 0 0 0 0 ${pixel(2 * r)}Z`,
  outside: (x: number, y: number, r: number) => `M${pixel(x)} ${pixel(y - r)}l${r} ${r}l${-r} ${r}l${-r} ${-r}Z`,
} as const;

/** A disc inside, a disc half filled on an edge, a diamond outside; an open ring where no band is. */
const MARKS = {
  inside: ["inside"],
  edge: ["ring", "half"],
  outside: ["outside"],
  none: ["ring"],
} as const satisfies Record<SpreadPlace, readonly (keyof typeof SHAPES)[]>;

/** All marks of a line that mean the same as one path: a browser is sent each of them once, as text. */
function Marks(props: {
  readonly place: SpreadPlace;
  readonly at: readonly { readonly x: number; readonly y: number }[];
  readonly r: number;
}) {
  // A ring's line is drawn half outside of it.
  const size = { whole: pixel(props.r), ring: pixel(Math.max(0.5, props.r - 0.6)) };
  return MARKS[props.place].map((shape) => {
    const r = shape === "ring" || shape === "half" ? size.ring : size.whole;
    return (
      <path key={shape} className={styles[shape]} d={props.at.map(({ x, y }) => SHAPES[shape](x, y, r)).join("")} />
    );
  });
}

/** Where the words of an edge stand: outward of it, within the drawing. */
function edgeWords(edge: Model["edges"][number], x: number, width: number) {
  const wide = textWidth(edge.label, PLAIN);
  if (edge.side === "low") return { x: pixel(Math.max(x, wide)), textAnchor: "end" as const };
  return { x: pixel(Math.min(x, width - wide)), textAnchor: "start" as const };
}

function stackStrips(strips: readonly SpreadStrip[], dot: number, top: number) {
  let y = top;
  return strips.map((strip) => {
    const words = y + LINE - 6;
    const line = y + LINE + ABOVE + strip.lanes * dot;
    y = line + GAP;
    return { strip, words, line };
  });
}

function legendPlaces(legend: Model["legend"], form: Form, top: number) {
  let x = SIDE;
  return legend.map(({ place, label }, at) => {
    const placed = form === "wide" ? { x, y: top + LINE - 6 } : { x: SIDE, y: top + (at + 1) * LINE - 6 };
    x += 16 + textWidth(label, PLAIN) + 24;
    return { place, label, ...placed };
  });
}

/** The parts of one drawing and its size in pixels, for a page and for a file: the band as a field, a line for each group of clubs with its dots upon it. */
export function spreadDrawing(chart: Model, form: Form) {
  const width = SIZES[form];
  const [left, right] = [SIDE, width - SIDE];
  const x = pixelScale(chart.axis, left, right);
  const dot = Math.min(WIDEST, (right - left) / chart.columns);
  const head = chart.edges.length === 0 ? 0 : LINE;
  const placed = stackStrips(chart.strips, dot, head);
  const bottom = (placed.at(-1)?.line ?? head) + 1;
  const legendTop = bottom + 2 * LINE + 8;
  const height = legendTop + (form === "wide" ? 1 : chart.legend.length) * LINE + 4;
  const band = chart.band && {
    from: chart.band.low === null ? left : x(chart.band.low),
    to: chart.band.high === null ? right : x(chart.band.high),
  };
  const parts = (
    <>
      {band ? (
        <rect
          className={styles.field}
          x={pixel(band.from)}
          width={pixel(band.to - band.from)}
          y={head}
          height={pixel(bottom - head)}
        />
      ) : null}
      <path
        className={styles.edge}
        d={chart.edges.map(({ at }) => `M${pixel(x(at))} ${head}V${pixel(bottom)}`).join("")}
      />
      <g className={styles.bandWord}>
        {chart.edges.map((edge) => (
          <text key={edge.side} y={LINE - 6} {...edgeWords(edge, x(edge.at), width)}>
            {edge.label}
          </text>
        ))}
      </g>
      {placed.map(({ strip, words, line }) => (
        <g key={strip.label}>
          <path className={styles.axis} d={`M${left} ${pixel(line)}H${right}`} />
          {chart.legend.map(({ place }) => {
            const own = strip.dots.filter((each) => each.place === place);
            const at = own.map((each) => ({ x: x(each.at), y: line - 1 - dot * (each.lane + 0.5) }));
            return own.length === 0 ? null : <Marks key={place} place={place} at={at} r={dot / 2} />;
          })}
          <text className={styles.name} x={left} y={pixel(words)}>
            {strip.label}
          </text>
        </g>
      ))}
      <path
        className={styles.axis}
        d={chart.axis.ticks.map(({ at }) => `M${pixel(x(at))} ${pixel(bottom - 1)}v6`).join("")}
      />
      <g className={styles.words}>
        {chart.axis.ticks.map((tick) => (
          <text key={tick.at} x={pixel(x(tick.at))} y={pixel(bottom + LINE)} textAnchor="middle">
            {tick.label}
          </text>
        ))}
        <text x={right} y={pixel(bottom + 2 * LINE)} textAnchor="end">
          {chart.axisTitle}
        </text>
        {legendPlaces(chart.legend, form, legendTop).map(({ place, label, x: at, y }) => (
          <g key={place}>
            <Marks place={place} at={[{ x: at + 5, y: y - 5 }]} r={5} />
            <text x={at + 16} y={pixel(y)}>
              {label}
            </text>
          </g>
        ))}
      </g>
    </>
  );
  return { parts, width, height: Math.ceil(height) };
}

function Drawing({ chart, form }: { readonly chart: Model; readonly form: Form }) {
  const { parts, width, height } = spreadDrawing(chart, form);
  return (
    <svg
      className={forms[form]}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={chart.sentence}
    >
      <title>{chart.title}</title>
      {parts}
    </svg>
  );
}

/** The levels of one fundamental as dots, for a page and for a phone; the table beside it counts the same dots. */
export function SpreadChart({ chart }: { readonly chart: Model }) {
  return (
    <div className={forms.plot}>
      <p>{chart.sentence}</p>
      <Drawing chart={chart} form="wide" />
      <Drawing chart={chart} form="phone" />
      <SaveChart files={chart.files} />
    </div>
  );
}
