import { checkedCaptureSd } from "@/lib/capture/misplacement";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { Words } from "@/lib/words/catalogue";
import { decimalsFor, sayNumber, withUnit } from "@/lib/words/number-words";
import type { TableModel } from "./basic-model";

/** What would make one session sharper than it is. */
export interface SharperPart {
  readonly heading: string;
  readonly table: TableModel;
}

/** Swings of a session as it is told of, and of one with more. */
const SWINGS = 5;
const MORE = 10;

/** A camera error that a check leaves at less than this share is worth a check. */
const WORTH_A_CHECK = 0.8;

/**
 * How well one session would be known with more swings, with a checked phone, with both, or with fewer swings: the parts of
 * the doubt add up as squares, and those of swing and reading shrink with the count.
 *
 * @returns null without a budget
 */
export function buildSharper(
  words: Words,
  fundamental: Fundamental,
  budget: TrackVerdict["errorBudget"],
): SharperPart | null {
  if (budget === null) return null;
  const checked = Math.min(checkedCaptureSd(fundamental), budget.camera);
  const half = (swings: number, camera: number): string => {
    const width = 1.96 * Math.hypot(budget.day, camera, Math.hypot(budget.swing, budget.reader) / Math.sqrt(swings));
    const number = words.say("number.half-only", { half: sayNumber(words, width, decimalsFor(width)) });
    return withUnit(words, number, fundamental.unit);
  };
  const row = (key: string, swings: number, camera: number): TableModel["rows"][number] => ({
    cells: [words.say(`sharper.${key}`, { swings }), half(swings, camera)],
    tone: "plain",
  });
  const care =
    checked < WORTH_A_CHECK * budget.camera ? [row("checked", SWINGS, checked), row("both", MORE, checked)] : [];
  return {
    heading: words.say("sharper.heading", { half: half(SWINGS, budget.camera) }),
    table: {
      caption: words.say("sharper.caption"),
      columns: [
        { label: words.say("sharper.change"), align: "start" },
        { label: words.say("sharper.known-to"), align: "end" },
      ],
      rows: [row("more", MORE, budget.camera), ...care, row("fewer", 3, budget.camera)],
    },
  };
}
