import type { PlanAnswer } from "@/lib/verdict/ask-plan";
import { POLICY } from "@/lib/verdict/policy";

/** What films that were asked about may be planned for, and their chance of it. */
export type TakenFor =
  | { readonly kind: "settles"; readonly chance: number }
  /** Signed size that they are meant for, in the unit. */
  | { readonly kind: "if-real"; readonly chance: number; readonly size: number };

/**
 * What films that were asked about may be planned for: whatever is true, where they settle that four times in five; else a
 * real change of the size that it looks, where they prove that so often. Null: neither, so that nobody is asked for them.
 */
export function takenPlan({ settles, ifReal }: PlanAnswer): TakenFor | null {
  if (settles >= POLICY.settleChance) return { kind: "settles", chance: settles };
  if (ifReal === null || ifReal.proves < POLICY.settleChance) return null;
  return { kind: "if-real", chance: ifReal.proves, size: ifReal.size };
}
