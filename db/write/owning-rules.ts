import { and, eq, exists, gte, lte, sql } from "drizzle-orm";
import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { DatedOwningRule } from "@/lib/domain/owning-rule";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { readOwningRules } from "../read/owning-rules";
import { session, student } from "../schema";
import { owningRule } from "../schema-plans";
import { goalBand } from "../schema-work";

export type OwningRuleInsert =
  | { readonly kind: "inserted"; readonly number: number }
  /** A rule changes nothing that was judged by the one before: it begins today or later, and not before one that has begun. */
  | { readonly kind: "too-early"; readonly earliest: CalendarDay };

/**
 * A new owning rule behind the earlier ones, none of which is ever changed. Whoever was filmed on its first day or later counts
 * as changed, and everybody where a goal band has begun since, which asks the question anew.
 */
export function insertOwningRule(
  db: Database,
  scope: AcademyScope,
  rule: DatedOwningRule,
  by: {
    readonly who: string;
    readonly why: string;
    readonly now: string;
    readonly today: CalendarDay;
    /** The academy’s day of an instant. */
    readonly dayOf: (instant: string) => CalendarDay;
  },
): OwningRuleInsert {
  return inTransaction(db, () => {
    // One that has begun did so today at the latest; one that is planned has judged nothing, and is replaced.
    if (rule.from < by.today) return { kind: "too-early", earliest: by.today };
    const { academyId } = scope;
    const number = (readOwningRules(db, scope).at(-1)?.number ?? 0) + 1;
    const { from, sessions, spanDays, restDays, share, shareLow } = rule;
    db.orm
      .insert(owningRule)
      .values({
        ...{ academyId, number, fromDay: from, sessions, spanDays, restDays, share, shareLow },
        ...{ who: by.who, why: by.why, recordedAt: by.now },
      })
      .run();
    const filmed = db.orm
      .select({ one: sql`1` })
      .from(session)
      .where(and(eq(session.studentId, student.id), gte(session.day, from)));
    const bands = db.orm
      .select({ from: goalBand.fromDay, createdAt: goalBand.createdAt })
      .from(goalBand)
      .where(and(eq(goalBand.academyId, academyId), lte(goalBand.fromDay, by.today)))
      .all();
    // One that was dated back decides from the day of its entry.
    const begun = bands.some((band) => band.from >= from || by.dayOf(band.createdAt) >= from);
    db.orm
      .update(student)
      .set({ revision: sql`${student.revision} + 1` })
      .where(and(eq(student.academyId, academyId), begun ? undefined : exists(filmed)))
      .run();
    return { kind: "inserted", number };
  });
}
