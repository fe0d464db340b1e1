import type { Database } from "@/db/client";
import { drillDecision, filmPlan, owningRule, priorityChoice, told, waiting } from "@/db/schema-plans";
import { NOW } from "./academy-fixture";

/** What a coach decided and planned for student `s1`, whose drill is `g1`, and the academy's owning rule: a row in every table. */
export function fillPlans({ orm }: Database): void {
  const by = { who: "Owner", recordedAt: NOW };
  const of = { studentId: "s1", clubGroup: "iron" };
  orm
    .insert(priorityChoice)
    .values({ ...of, fundamentalId: "hinge", reason: "a new grip", day: "2031-01-04", ...by })
    .run();
  orm
    .insert(filmPlan)
    .values({ id: "fp1", ...of, madeOn: "2031-01-04", dueOn: "2031-01-11", body: "{}", ...by })
    .run();
  orm
    .insert(told)
    .values({ id: "to1", ...of, kind: "message", text: "Ari: good news.", findings: "[]", day: "2031-01-04", ...by })
    .run();
  orm
    .insert(waiting)
    .values({ id: "wa1", studentId: "s1", fundamentalId: "hinge", fromDay: "2031-01-04", ...by })
    .run();
  orm
    .insert(drillDecision)
    .values({ assignmentId: "g1", decision: "keep", why: "half way", day: "2031-01-09", ...by })
    .run();
  const rule = { sessions: 4, spanDays: 28, restDays: 7, share: 0.8, shareLow: 0.6 };
  orm
    .insert(owningRule)
    .values({ academyId: "a1", number: 1, fromDay: "2031-01-01", ...rule, why: "a longer season", ...by })
    .run();
}
