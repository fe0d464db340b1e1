import type { Unit } from "@/lib/domain/fundamental";
import type { Words } from "./catalogue";

/** Digits after the point that an uncertainty supports: none from a half-width of 3 on, else one. */
export function decimalsFor(halfWidth: number): number {
  return Math.abs(halfWidth) >= 3 ? 0 : 1;
}

/** A number with a fixed count of digits after the language's point or comma and a true minus sign. Negative zero reads zero. */
export function sayNumber(words: Words, value: number, decimals: number): string {
  const plain = Math.abs(value).toFixed(decimals);
  const text = words.locale === "de" ? plain.replace(".", ",") : plain;
  return value < 0 && Number(plain) !== 0 ? `−${text}` : text;
}

/** The same with its sign always shown, but for zero. */
export function saySigned(words: Words, value: number, decimals: number): string {
  const text = sayNumber(words, value, decimals);
  return value > 0 && Number(value.toFixed(decimals)) !== 0 ? `+${text}` : text;
}

/** A finished number with its unit, never parted from it. */
export function withUnit(words: Words, number: string, unit: Unit): string {
  return words.say(`unit.${unit}.with`, { number });
}

/** Half the width of an interval, taken from its longer side. */
export function halfWidth(interval: {
  readonly estimate: number;
  readonly low95: number;
  readonly high95: number;
}): number {
  return Math.max(interval.high95 - interval.estimate, interval.estimate - interval.low95);
}

/** A level with its 95 of 100: “6.7 ± 0.8°”. */
export function sayLevel(
  words: Words,
  interval: { readonly estimate: number; readonly low95: number; readonly high95: number },
  unit: Unit,
): string {
  const half = halfWidth(interval);
  const decimals = decimalsFor(half);
  const number = words.say("number.plus-minus", {
    number: sayNumber(words, interval.estimate, decimals),
    half: sayNumber(words, half, decimals),
  });
  return withUnit(words, number, unit);
}

/** “a to b” with one unit. */
export function sayRange(words: Words, low: number, high: number, decimals: number, unit: Unit): string {
  return withUnit(
    words,
    words.say("number.range", { low: sayNumber(words, low, decimals), high: sayNumber(words, high, decimals) }),
    unit,
  );
}

/** A goal band: both edges, or the one it has. */
export function sayBand(
  words: Words,
  band: { readonly low: number | null; readonly high: number | null },
  unit: Unit,
): string {
  const edge = (value: number): string => sayNumber(words, value, Number.isInteger(value) ? 0 : 1);
  if (band.low !== null && band.high !== null)
    return withUnit(words, words.say("number.range", { low: edge(band.low), high: edge(band.high) }), unit);
  if (band.low !== null) return words.say("band.at-least", { edge: withUnit(words, edge(band.low), unit) });
  if (band.high !== null) return words.say("band.at-most", { edge: withUnit(words, edge(band.high), unit) });
  return words.say("band.none");
}

/** A share of swings with its 95 of 100: “about 24 of 100, 11 to 43”. */
export function sayShare(
  words: Words,
  share: { readonly estimate: number; readonly low95: number; readonly high95: number },
): string {
  const hundred = (value: number): string => sayNumber(words, Math.round(value * 100), 0);
  return words.say("share.of-100", {
    share: hundred(share.estimate),
    low: hundred(share.low95),
    high: hundred(share.high95),
  });
}

/** How sure: “about 1 in 40 that this is nothing”. Never rarer than 1 in 1000: the model can't carry more. */
export function saySure(words: Words, noChange: number): string {
  if (!(noChange > 0.001)) return words.say("sure.under-1000");
  const odds = 1 / noChange;
  if (odds < 2) return words.say("sure.likely-nothing", { share: sayNumber(words, Math.round(noChange * 100), 0) });
  return words.say("sure.one-in", { odds: sayNumber(words, roundedOdds(odds), 0) });
}

/** The chance that it is nothing, for a table whose head says so: “1 in 40”. */
export function saySureShort(words: Words, noChange: number): string {
  if (!(noChange > 0.001)) return words.say("sure.short.under-1000");
  return noChange > 0.5
    ? words.say("sure.short.share", { share: sayNumber(words, Math.round(noChange * 100), 0) })
    : words.say("sure.short.one-in", { odds: sayNumber(words, roundedOdds(1 / noChange), 0) });
}

function roundedOdds(odds: number): number {
  if (odds < 20) return Math.round(odds);
  return odds < 100 ? Math.round(odds / 5) * 5 : Math.round(odds / 50) * 50;
}

/** How many times better, rounded to what it supports, whichever way; beyond 1000 it is said to be over it. */
export function timesOf(words: Words, logBayesFactor: number): { readonly times: string; readonly over: "yes" | "no" } {
  const times = Math.exp(Math.abs(logBayesFactor));
  if (times > 1000) return { times: sayNumber(words, 1000, 0), over: "yes" };
  const rounded =
    times >= 100 ? Math.round(times / 10) * 10 : times >= 10 ? Math.round(times) : Math.round(times * 10) / 10;
  return { times: sayNumber(words, rounded, rounded < 10 ? 1 : 0), over: "no" };
}

/** How many times better the films fit a lasting change than none. */
export function sayFits(words: Words, logBayesFactor: number): string {
  const { times, over } = timesOf(words, logBayesFactor);
  const args = { times };
  if (over === "yes") return words.say(logBayesFactor > 0 ? "fits.change-over-1000" : "fits.none-over-1000");
  return words.say(logBayesFactor > 0 ? "fits.change" : "fits.none", args);
}

/** A limit below which something lies, rounded up to a tenth, so that what is printed still holds. */
export function sayLimit(words: Words, limit: number, unit: Unit): string {
  const tenths = Math.ceil(limit * 10 - 1e-9);
  return withUnit(words, sayNumber(words, tenths / 10, tenths % 10 === 0 ? 0 : 1), unit);
}
