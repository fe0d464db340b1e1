import { option } from "./import-log";
import type { MessageArgs } from "./import-preview";
import { convertUnit, isConvertible, isOwnUnit, needsStanceWidth } from "./parse-unit";
import type { ParsedValue } from "./parse-value";
import { parseValue } from "./parse-value";
import { groupBy, type ImportContext, type ReadingDraft } from "./row-draft";
import { argumentWord } from "./text-key";

const rowsOf = (readings: readonly ReadingDraft[]): readonly number[] => readings.map((reading) => reading.row.row);

/** Sets values aside by an answer, or lets them wait for one. */
export function holdBack(
  readings: readonly ReadingDraft[],
  state: "waiting" | "left-out",
  context: ImportContext,
): void {
  for (const reading of readings) {
    reading.state = state;
    if (state === "left-out")
      context.log.note("left-out", reading.row.row, reading.column.header, { value: reading.typed.trim() });
  }
}

/** Turns what is written into numbers: nothing is guessed that the file itself does not settle. */
export function settleNumbers(readings: readonly ReadingDraft[], context: ImportContext): void {
  const { log } = context;
  const commas: ReadingDraft[] = [];
  const points: ReadingDraft[] = [];
  const lookAlikes: ReadingDraft[] = [];
  let hasComma = false;
  let hasPoint = false;
  for (const reading of readings) {
    const { parsed, row, column } = reading;
    if (parsed.kind === "issue") {
      log.issue({
        code: parsed.code,
        row: row.row,
        column: column.header,
        value: reading.typed.trim(),
        args: { taken: parsed.taken, unit: parsed.taken, fundamental: reading.fundamental.id },
        mend: parsed.code === "full-width" ? "write-number" : null,
        at: column.at,
      });
      reading.state = "refused";
    } else if (parsed.kind === "look-alike") lookAlikes.push(reading);
    else if (parsed.kind === "either") commas.push(reading);
    else if (parsed.kind === "number") {
      reading.value = parsed.value;
      for (const note of parsed.notes) {
        log.note(note, row.row, column.header, { value: reading.typed.trim(), taken: parsed.value });
      }
      if (parsed.grouped !== null) points.push(reading);
      if (parsed.notes.includes("decimal-comma")) hasComma = true;
      else if (parsed.grouped === null && reading.typed.includes(".")) hasPoint = true;
    }
  }
  if (lookAlikes.length > 0) {
    const [first] = lookAlikes;
    const taken = first?.parsed.kind === "look-alike" ? first.parsed.taken : "";
    const answer = log.ask(
      {
        id: "look-alike",
        code: "look-alike",
        args: { value: first?.typed.trim() ?? "", taken, column: first?.column.header ?? "" },
        options: [option("read-as", { taken }), option("leave-out")],
        at: first?.column.at,
      },
      rowsOf(lookAlikes),
    );
    if (answer?.option === "read-as") {
      for (const reading of lookAlikes) {
        if (reading.parsed.kind !== "look-alike") continue;
        reading.value = reading.parsed.value;
        log.note(
          "read-as",
          reading.row.row,
          reading.column.header,
          { value: reading.typed.trim(), taken: reading.parsed.value },
          reading.typed,
        );
      }
    } else holdBack(lookAlikes, answer ? "left-out" : "waiting", context);
  }
  const commaFile = hasComma && !hasPoint;
  settleSeparator(commas, commaFile ? "decimal" : null, "comma", context);
  if (hasComma) settleSeparator(points, null, "point", context);
}

function settleSeparator(
  readings: readonly ReadingDraft[],
  settled: "decimal" | null,
  sign: "comma" | "point",
  context: ImportContext,
): void {
  const [first] = readings;
  if (!first) return;
  const both = (parsed: ParsedValue) =>
    parsed.kind === "either"
      ? { decimal: parsed.decimal, grouped: parsed.grouped }
      : parsed.kind === "number"
        ? { decimal: parsed.value, grouped: parsed.grouped ?? parsed.value }
        : { decimal: 0, grouped: 0 };
  const { decimal, grouped } = both(first.parsed);
  const choice =
    settled ??
    context.log.ask(
      {
        id: sign,
        code: sign,
        args: { value: first.typed.trim(), column: first.column.header },
        options: [option("decimal", { taken: decimal }), option("thousands", { taken: grouped }), option("leave-out")],
        at: first.column.at,
      },
      rowsOf(readings),
    )?.option;
  if (choice !== "decimal" && choice !== "thousands") {
    holdBack(readings, choice === "leave-out" ? "left-out" : "waiting", context);
    return;
  }
  for (const reading of readings) {
    const values = both(reading.parsed);
    reading.value = choice === "decimal" ? values.decimal : values.grouped;
    const note = choice === "decimal" ? "decimal-comma" : "thousands";
    context.log.note(
      sign === "point" && choice === "decimal" ? "decimal-point" : note,
      reading.row.row,
      reading.column.header,
      {
        value: reading.typed.trim(),
        taken: reading.value,
      },
    );
  }
}

/** Values in another unit than the fundamental's: converted on an answer only, refused where they can't be. */
export function settleUnits(readings: readonly ReadingDraft[], context: ImportContext): void {
  const other = readings.filter(
    ({ state, value, unit, fundamental }) =>
      state === "alive" && value !== null && unit !== null && !isOwnUnit(unit, fundamental.unit),
  );
  for (const [, group] of groupBy(other, ({ fundamental, unit }) => `${fundamental.id}\u0000${unit}`)) {
    const [first] = group;
    const unit = first?.unit;
    if (!first || !unit) continue;
    const { fundamental, column } = first;
    const args = {
      fundamental: fundamental.id,
      unit: argumentWord(unit),
      own: argumentWord(fundamental.unit),
      column: column.header,
    };
    if (!isConvertible(unit, fundamental.unit)) {
      for (const reading of group) {
        context.log.issue({
          code: "other-unit",
          row: reading.row.row,
          column: column.header,
          value: reading.typed.trim(),
          args,
          at: column.at,
        });
        reading.state = "refused";
      }
      continue;
    }
    const lacksWidth = needsStanceWidth(unit, fundamental.unit) && group.some(({ row }) => row.stanceWidthCm === null);
    const id = `unit:${fundamental.id}:${unit}`;
    // Whoever chose the unit of the column has answered already; a stance width may still be missing.
    if (!lacksWidth && group.every(({ column: { unitSaid }, unit }) => unitSaid === "chosen" && unit === column.unit)) {
      convertAll(group, args, null, context);
      continue;
    }
    const answer = context.log.ask(
      {
        id,
        code: lacksWidth ? "other-unit-stance" : "other-unit",
        args: { ...args, value: first.typed.trim() },
        options: [
          lacksWidth
            ? option(
                "convert",
                args,
                { name: "stanceWidth", kind: "number", code: "stance-width", required: "required" },
                "convert-stance",
              )
            : option("convert", args),
          option("leave-out"),
        ],
        at: column.at,
      },
      rowsOf(group),
    );
    const width = parseValue(answer?.fields.get("stanceWidth") ?? "");
    const typedWidth = width.kind === "number" && width.value >= 10 && width.value <= 120 ? width.value : null;
    if (answer?.option === "convert" && lacksWidth && typedWidth === null)
      context.log.refuseAnswer(id, "answer-stance-width");
    if (answer?.option !== "convert" || (lacksWidth && typedWidth === null)) {
      holdBack(group, answer?.option === "leave-out" ? "left-out" : "waiting", context);
      continue;
    }
    convertAll(group, args, typedWidth, context);
  }
}

/** Turns values into their fundamental's unit, each with a note. */
function convertAll(
  readings: readonly ReadingDraft[],
  args: MessageArgs,
  typedWidth: number | null,
  context: ImportContext,
): void {
  for (const reading of readings) {
    const { unit, fundamental, row, column } = reading;
    if (unit === null) continue;
    const converted = convertUnit(reading.value ?? 0, unit, fundamental.unit, row.stanceWidthCm ?? typedWidth);
    if (converted === null) continue;
    reading.value = converted;
    const taken = Number(converted.toPrecision(4));
    context.log.note("converted", row.row, column.header, { ...args, value: reading.typed.trim(), taken }, unit);
  }
}
