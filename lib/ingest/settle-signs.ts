import { clubKindOf } from "@/lib/domain/club-group";
import { neutralValue, type SignRule } from "@/lib/domain/handedness";
import { option } from "./import-log";
import { IMPORT_THRESHOLDS } from "./import-thresholds";
import type { ImportContext, ReadingDraft } from "./row-draft";

/** Whether a value lies on the other side of nought than the goal band asks for. */
function isContrary({ fundamental, row, value }: ReadingDraft): "contrary" | "fitting" | "neither" {
  const band = row.clubGroup === null ? undefined : fundamental.goals[clubKindOf(row.clubGroup)];
  const wanted = band?.low != null && band.low > 0 ? 1 : band?.high != null && band.high < 0 ? -1 : 0;
  if (wanted === 0 || value === null || Math.abs(value) <= 1) return "neither";
  return Math.sign(value) === wanted ? "fitting" : "contrary";
}

/**
 * Brings every value into the neutral sign. A source with left-handers that doesn't say what plus means is asked about
 * once, and their mirrored values wait for the answer: a sign taken wrongly turns a finding round.
 */
export function settleSigns(readings: readonly ReadingDraft[], context: ImportContext): void {
  const { log } = context;
  const unsaid = readings.filter(
    ({ state, row, fundamental, value }) =>
      state === "alive" &&
      value !== null &&
      row.hand === "left" &&
      row.signInFile === null &&
      fundamental.mirrors === "mirrors",
  );
  let rule: SignRule | null = "neutral";
  if (unsaid.length > 0) {
    const sides = unsaid.map(isContrary);
    const contrary = sides.filter((side) => side === "contrary").length;
    const fitting = sides.filter((side) => side === "fitting").length;
    const suspected = contrary >= IMPORT_THRESHOLDS.contrarySigns.value && contrary > fitting;
    const alias = unsaid[0]?.row.alias ?? "";
    const options = [
      option("neutral", {}, undefined, "sign-neutral"),
      option("picture", {}, undefined, "sign-picture"),
    ];
    const answer = log.ask(
      {
        id: "left-sign",
        code: suspected ? "left-sign-contrary" : "left-sign",
        args: { alias, contrary, of: contrary + fitting },
        options: suspected ? options.toReversed() : options,
        at: unsaid[0]?.column.at,
      },
      unsaid.map(({ row }) => row.row),
    );
    rule = answer === null ? null : answer.option === "picture" ? "picture" : "neutral";
    for (const reading of unsaid) {
      if (rule === null) reading.state = "waiting";
      else
        log.note(rule === "neutral" ? "sign-taken-neutral" : "sign-turned", reading.row.row, reading.column.header, {
          alias,
        });
    }
  }
  const unsaidOnes = new Set(unsaid);
  for (const reading of readings) {
    if (reading.state !== "alive" || reading.value === null || reading.row.hand === null) continue;
    reading.signRule = reading.row.signInFile ?? (unsaidOnes.has(reading) ? (rule ?? "neutral") : "neutral");
    const turned = neutralValue(reading.value, reading.row.hand, reading.signRule, reading.fundamental.mirrors);
    if (turned !== reading.value && reading.row.signInFile !== null) {
      log.note("sign-turned", reading.row.row, reading.column.header, { alias: reading.row.alias });
    }
    reading.value = turned;
  }
}
