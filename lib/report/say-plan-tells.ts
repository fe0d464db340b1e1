import type { PlannedFundamental } from "@/lib/verdict/plan-session";
import type { Words } from "@/lib/words/catalogue";
import { sayChance, sayIfReal, sayNoPlanShort, saySettle } from "@/lib/words/say-settle";
import { cameraCare } from "./camera-care";

/** Swings that a plan which is told asks of each film; 0: none is. */
function swingsToTell({ tells }: PlannedFundamental): number {
  if (tells.kind === "plan") return tells.plan.swingsEach;
  return tells.kind === "taken" ? tells.swingsEach : 0;
}

/** What the film would tell of one fundamental, with its chance and its "if"; what it needs where it has too few swings for that. */
export function sayPlanTells(words: Words, item: PlannedFundamental): string {
  const { tells, track, fundamental, swings } = item;
  const asked = swingsToTell(item);
  // A chance is promised for films with so many swings: beside fewer it would be promised for nothing.
  if (swings < asked) return words.say("plan.tells.more", { swings, asked });
  if (tells.kind === "taken")
    return words.say("plan.tells.taken", { come: tells.come, of: tells.of, chance: sayChance(words, tells.chance) });
  if (tells.kind === "plan") {
    const { plan } = tells;
    const care = cameraCare(plan, track?.verdict.usualCaptureSd ?? null, fundamental);
    return "probability" in plan
      ? sayIfReal(words, plan, fundamental.unit, plan, care).join(" ")
      : saySettle(words, plan, care);
  }
  const settle = track?.verdict.settle ?? null;
  if (["no-plan", "first-look"].includes(tells.kind) && settle !== null && "none" in settle)
    return words.say("plan.tells.open", { why: sayNoPlanShort(words, settle) });
  return words.say(`plan.tells.${tells.kind === "no-plan" || tells.kind === "first-look" ? "first" : tells.kind}`);
}
