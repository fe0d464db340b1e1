import { readOwningRules } from "@/db/read/owning-rules";
import { owningRuleOn } from "@/lib/domain/owning-rule";
import { POLICY } from "@/lib/verdict/policy";
import type { Viewer } from "../gate";

/** Days after the last practice from which a film tells what stays: those of the owning rule in force, and never none. */
export function restDaysOf({ db, scope, today }: Pick<Viewer, "db" | "scope" | "today">): number {
  const rule = owningRuleOn(readOwningRules(db, scope), today);
  return Math.max(1, rule?.restDays ?? POLICY.ownedRest);
}
