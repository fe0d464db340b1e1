import type { Fundamental } from "@/lib/domain/fundamental";
import type { Words } from "./catalogue";

/** The name of a fundamental: the academy's own name, or the trade's. */
export function sayFundamental(words: Words, fundamental: Fundamental): string {
  return fundamental.ownName ?? words.say(`fundamental.${fundamental.id}.name`);
}

/** What is measured, where and how, in one line. */
export function sayDefinition(words: Words, fundamental: Fundamental): string {
  if (fundamental.ownName !== null)
    return words.say("fundamental.own.definition", {
      view: words.say(`view.${fundamental.view}`),
      checkpoint: words.say(`checkpoint.${fundamental.checkpoint}`),
      how: fundamental.ownHow ?? "",
    });
  return words.say(`fundamental.${fundamental.id}.definition`);
}

/** What plus means. */
export function sayPlus(words: Words, fundamental: Fundamental): string {
  if (fundamental.ownName === null) return words.say(`fundamental.${fundamental.id}.plus`);
  return fundamental.ownPlus === undefined
    ? words.say("fundamental.own.plus")
    : words.say("fundamental.own.plus-means", { plus: fundamental.ownPlus });
}
