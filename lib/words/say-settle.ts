import type { Unit } from "@/lib/domain/fundamental";
import type { ConditionalPlan, ExcludingPlan, SettlePlan } from "@/lib/domain/track-verdict";
import type { Words } from "./catalogue";
import { sayLimit, sayNumber, saySigned, withUnit } from "./number-words";

/** What it takes to take care of the camera for one fundamental, as the end of a message key; null: nothing more than usual. */
export type CameraCare = "yaw" | "roll" | "yaw-roll" | "offset" | "offset-roll" | "any" | null;

/** A plan's films: how many, and of how many swings. */
type Films = { readonly sessions: number; readonly swingsEach: number };

function films(words: Words, plan: Films, care: CameraCare): Readonly<Record<string, string | number>> {
  return {
    films: plan.sessions,
    swings: plan.swingsEach,
    care: care === null ? "" : words.say(`settle.care.${care}`),
  };
}

function hundred(words: Words, share: number): string {
  return sayNumber(words, Math.round(share * 100), 0);
}

/** A chance in hundreds from few drawn futures: none or all of them is no certainty. */
export function sayChance(words: Words, share: number): string {
  if (share <= 0) return words.say("ask-plan.chance.under");
  return share >= 1 ? words.say("ask-plan.chance.over") : hundred(words, share);
}

/** The size that a conditional plan is meant for: “+6°”. */
export function sayMeantSize(words: Words, size: number, unit: Unit): string {
  return withUnit(words, saySigned(words, size, Math.abs(size) >= 3 ? 0 : 1), unit);
}

/** The plan that settles an open track whatever is true, or why there is none: films on different days, swings each, then the care for the camera, with its chance. */
export function saySettle(words: Words, plan: SettlePlan, care: CameraCare): string {
  if ("none" in plan) return words.say(`settle.none.${plan.none}`);
  return words.say("settle.plan", { ...films(words, plan, care), chance: sayChance(words, plan.chance) });
}

/** The plan that proves what a track points to, if it is real and as big as it looks, and how likely that is; or how far none reaches. */
export function sayIfReal(
  words: Words,
  plan: ConditionalPlan,
  unit: Unit,
  largest: Films,
  care: CameraCare,
): readonly string[] {
  const meant = { size: sayMeantSize(words, plan.size, unit), likely: hundred(words, plan.probability) };
  if ("none" in plan)
    return [
      words.say("settle.if-real.none", {
        ...films(words, largest, care),
        ...meant,
        chance: sayChance(words, plan.bestChance),
      }),
    ];
  return [
    words.say("settle.if-real", { ...films(words, plan, care), ...meant, chance: sayChance(words, plan.chance) }),
    words.say("settle.if-real.likely", meant),
  ];
}

/** What the largest plan would exclude if nothing has changed. */
export function sayIfNothing(
  words: Words,
  plan: ExcludingPlan,
  unit: Unit,
  care: CameraCare,
  now: number | null,
): string {
  const limit = sayLimit(words, plan.changeBelow, unit);
  return words.say(now === null ? "settle.if-nothing.first" : "settle.if-nothing", {
    ...films(words, plan, care),
    limit,
    chance: sayChance(words, plan.chance),
    now: now === null ? "" : sayLimit(words, now, unit),
  });
}

/** A plan for a table or a list; a conditional one says its if. */
export function sayPlanShort(
  words: Words,
  plan: Films & { readonly chance: number; readonly size?: number },
  unit: Unit,
  care: CameraCare,
): string {
  return words.say(plan.size === undefined ? "settle.short" : "settle.if-real.short", {
    ...films(words, plan, care),
    chance: sayChance(words, plan.chance),
    size: plan.size === undefined ? "" : sayMeantSize(words, plan.size, unit),
  });
}

/** Why there is no plan, for a table. */
export function sayNoPlanShort(words: Words, plan: Extract<SettlePlan, { none: string }>): string {
  return words.say(plan.none === "no-plan" ? "settle.none.short" : `settle.none.short.${plan.none}`);
}
