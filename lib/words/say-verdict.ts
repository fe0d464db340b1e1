import type { Edges, Unit } from "@/lib/domain/fundamental";
import type { Interval, Position, ProvedChange } from "@/lib/domain/track-verdict";
import type { Words } from "./catalogue";
import { sayDay, sayStretch } from "./day-words";
import { decimalsFor, halfWidth, sayNumber, saySigned, withUnit } from "./number-words";

/** Levels before and after as printed: with the digits that the change's own doubt supports. */
function printedLevels(change: ProvedChange): { decimals: number; before: number; after: number } {
  const decimals = decimalsFor(halfWidth(change.size));
  const round = (value: number): number => Number(value.toFixed(decimals));
  return { decimals, before: round(change.before.estimate), after: round(change.after.estimate) };
}

/** The size of a change with its 95 of 100; it equals the difference of the printed levels. */
export function saySize(words: Words, change: ProvedChange, unit: Unit): string {
  const { decimals, before, after } = printedLevels(change);
  return withUnit(
    words,
    words.say("number.plus-minus", {
      number: saySigned(words, after - before, decimals),
      half: sayNumber(words, halfWidth(change.size), decimals),
    }),
    unit,
  );
}

/** “2.2° → 7.5°”. */
export function sayFromTo(words: Words, change: ProvedChange, unit: Unit): string {
  const { decimals, before, after } = printedLevels(change);
  return words.say("number.from-to", {
    from: withUnit(words, sayNumber(words, before, decimals), unit),
    to: withUnit(words, sayNumber(words, after, decimals), unit),
  });
}

/** When it happened: a stretch of days, or since when it has been going on. */
export function sayHappened(words: Words, change: ProvedChange): string {
  return change.shape === "gradual"
    ? words.say("change.gradual", { day: sayDay(words, change.from, "short") })
    : words.say("change.step", { stretch: sayStretch(words, change.from, change.to) });
}

/** The same for a table whose head says what it is. */
export function sayHappenedShort(words: Words, change: ProvedChange): string {
  return change.shape === "gradual" ? sayHappened(words, change) : sayStretch(words, change.from, change.to);
}

/** Where the level lies against the band, and by how much it is outside. */
export function sayPosition(
  words: Words,
  position: Position | null,
  level: Interval | null,
  goal: Edges,
  unit: Unit,
): string {
  if (goal.low === null && goal.high === null) return words.say("position.none");
  if (position === null || level === null) return words.say("position.unknown");
  if (position !== "outside") return words.say(`position.${position}`);
  const above = goal.high !== null && level.low95 > goal.high;
  const near = above ? level.low95 - (goal.high ?? 0) : (goal.low ?? 0) - level.high95;
  const far = above ? level.high95 - (goal.high ?? 0) : (goal.low ?? 0) - level.low95;
  const decimals = decimalsFor((far - near) / 2);
  return words.say(above ? "position.outside.above" : "position.outside.below", {
    by: withUnit(
      words,
      words.say("number.range", { low: sayNumber(words, near, decimals), high: sayNumber(words, far, decimals) }),
      unit,
    ),
  });
}
