import { CLUB_KINDS } from "@/lib/domain/club-group";
import type { Fundamental } from "@/lib/domain/fundamental";
import { option } from "./import-log";
import { IMPORT_THRESHOLDS } from "./import-thresholds";
import { convertUnit, type FileUnit } from "./parse-unit";
import { groupBy, type ImportContext, type ReadingDraft } from "./row-draft";
import { holdBack } from "./settle-values";
import { argumentWord } from "./text-key";

const HALF_TURN = Math.PI;

const isIn = (value: number, { plausible }: Fundamental): boolean => value >= plausible.low && value <= plausible.high;

/** Angles whose goals lie far from nought can't be a few degrees: such a value looks like radians. */
function isFarFromNought(fundamental: Fundamental): boolean {
  return CLUB_KINDS.every((kind) => (fundamental.goals[kind].low ?? 0) >= 15);
}

const hasDecimals = ({ typed }: ReadingDraft): boolean => /\d*[.,]\d{2,}/.test(typed);

/** Values that look as if written in a unit that is smaller by far: radians for degrees, 0.12 for 12 %. */
function smallSuspects(
  fundamental: Fundamental,
  readings: readonly ReadingDraft[],
): { readonly unit: FileUnit; readonly readings: readonly ReadingDraft[] } | null {
  const unit = fundamental.unit === "deg" ? "rad" : "fraction";
  const plain = readings.filter((reading) => reading.unit === null);
  const converted = (value: number): number => convertUnit(value, unit, fundamental.unit, null) ?? value;
  if (unit === "rad" && isFarFromNought(fundamental)) {
    const small = plain.filter(
      ({ value }) =>
        value !== null && value !== 0 && Math.abs(value) < HALF_TURN && isIn(converted(value), fundamental),
    );
    return small.length > 0 ? { unit, readings: small } : null;
  }
  const limit = unit === "rad" ? 1.05 : 1.5;
  const whole =
    plain.length >= IMPORT_THRESHOLDS.otherUnit.value &&
    plain.every(({ value }) => value !== null && Math.abs(value) <= limit && isIn(converted(value), fundamental)) &&
    plain.filter(hasDecimals).length > plain.length / 2;
  return whole ? { unit, readings: plain } : null;
}

interface Likely {
  readonly word: "mm" | "tenths";
  /** Factor into the fundamental's unit; null where that row's stance width isn't known. */
  scaleOf(reading: ReadingDraft): number | null;
}

/** A stance width for judging whether millimetres would fit; never used to convert. */
const USUAL_STANCE_CM = 45;

const LIKELY: readonly Likely[] = [
  { word: "mm", scaleOf: ({ row }) => (row.stanceWidthCm === null ? null : 10 / row.stanceWidthCm) },
  { word: "tenths", scaleOf: () => 0.1 },
];

/** The unit that most of the values out of range would fit, taken as written in it. */
function likelyUnit(fundamental: Fundamental, readings: readonly ReadingDraft[]): Likely | null {
  const fits = (likely: Likely): boolean =>
    readings.filter((reading) =>
      isIn((reading.value ?? 0) * (likely.scaleOf(reading) ?? 10 / USUAL_STANCE_CM), fundamental),
    ).length >=
    0.9 * readings.length;
  return LIKELY.filter(({ word }) => word !== "mm" || fundamental.unit === "pct-stance").find(fits) ?? null;
}

/** Asks about values that nobody would expect: one question a fundamental, none of them dropped unasked. */
export function settlePlausible(readings: readonly ReadingDraft[], context: ImportContext): void {
  const alive = readings.filter(({ state, value }) => state === "alive" && value !== null);
  for (const [, group] of groupBy(alive, ({ fundamental }) => fundamental.id)) {
    const fundamental = group[0]?.fundamental;
    if (!fundamental) continue;
    askSmall(fundamental, group, context);
    const left = group.filter(({ state }) => state === "alive");
    const out = left.filter(({ value }) => value !== null && !isIn(value, fundamental));
    if (out.length > 0) askRange(fundamental, left, out, context);
  }
}

function askSmall(fundamental: Fundamental, group: readonly ReadingDraft[], context: ImportContext): void {
  const suspects = smallSuspects(fundamental, group);
  const [first] = suspects?.readings ?? [];
  if (!suspects || !first) return;
  const values = suspects.readings.map(({ value }) => value ?? 0);
  const args = {
    fundamental: fundamental.id,
    unit: argumentWord(suspects.unit),
    own: argumentWord(fundamental.unit),
    low: Math.min(...values.slice(0, 10_000)),
    high: Math.max(...values.slice(0, 10_000)),
  };
  const answer = context.log.ask(
    {
      id: `small:${fundamental.id}`,
      code: suspects.readings.length === group.length ? "small-all" : "small-some",
      args,
      options: [option("convert", args), option("keep"), option("leave-out")],
      at: first.column.at,
    },
    suspects.readings.map(({ row }) => row.row),
  );
  if (answer?.option === "convert") {
    for (const reading of suspects.readings) {
      reading.value = convertUnit(reading.value ?? 0, suspects.unit, fundamental.unit, null);
      context.log.note(
        "converted",
        reading.row.row,
        reading.column.header,
        {
          ...args,
          value: reading.typed.trim(),
          taken: Number((reading.value ?? 0).toPrecision(4)),
        },
        suspects.unit,
      );
    }
  } else if (answer?.option === "keep") {
    for (const reading of suspects.readings)
      context.log.note("kept-as-written", reading.row.row, reading.column.header, { value: reading.typed.trim() });
  } else holdBack(suspects.readings, answer ? "left-out" : "waiting", context);
}

function askRange(
  fundamental: Fundamental,
  all: readonly ReadingDraft[],
  out: readonly ReadingDraft[],
  context: ImportContext,
): void {
  const { log } = context;
  const many = out.length > IMPORT_THRESHOLDS.outOfRange.value * all.length && out.length > 1;
  const likely = many ? likelyUnit(fundamental, out) : null;
  const { low, high } = fundamental.plausible;
  const args = {
    fundamental: fundamental.id,
    own: argumentWord(fundamental.unit),
    low,
    high,
    of: all.length,
    likely: likely?.word ?? "none",
    value: out[0]?.typed.trim() ?? "",
    column: out[0]?.column.header ?? "",
  };
  const canScale = likely !== null && out.every((reading) => likely.scaleOf(reading) !== null);
  const answer = log.ask(
    {
      id: `range:${fundamental.id}`,
      code: many ? "out-of-range-many" : "out-of-range",
      args,
      options: [
        ...(canScale ? [option("scale", args)] : []),
        option("leave-out", {}, undefined, "leave-out-of-range"),
        option("keep"),
      ],
      at: out[0]?.column.at,
    },
    out.map(({ row }) => row.row),
  );
  if (!answer) {
    if (many)
      for (const reading of all)
        if (!out.includes(reading))
          log.note(
            "waits-for-unit",
            reading.row.row,
            reading.column.header,
            { fundamental: fundamental.id },
            fundamental.id,
          );
    holdBack(many ? all : out, "waiting", context);
  } else if (answer.option === "leave-out") holdBack(out, "left-out", context);
  else if (answer.option === "keep") {
    for (const reading of out)
      log.note("kept-as-written", reading.row.row, reading.column.header, { value: reading.typed.trim() });
  } else if (likely) {
    for (const reading of out) {
      reading.value = (reading.value ?? 0) * (likely.scaleOf(reading) ?? 1);
      log.note(
        "scaled",
        reading.row.row,
        reading.column.header,
        { ...args, value: reading.typed.trim(), taken: Number(reading.value.toPrecision(4)) },
        likely.word,
      );
    }
  }
}
