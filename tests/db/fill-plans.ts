import type { Database } from "@/db/client";
import {
  drillDecision,
  fairAllocation,
  fairStep,
  fairTest,
  fairValue,
  filmPlan,
  owningRule,
  priorityChoice,
  told,
  waiting,
} from "@/db/schema-plans";
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
  const plan = { least: 4, spread: 5, students: 40, looks: 2, days: 42, seed: "ab", day: "2031-01-04" };
  orm
    .insert(fairTest)
    .values({
      id: "ft1",
      academyId: "a1",
      fundamentalId: "hinge",
      firstDrillId: "d1",
      secondDrillId: "d1",
      ...plan,
      ...by,
    })
    .run();
  const place = { coachId: "u1", place: 0, arm: 1 };
  orm
    .insert(fairAllocation)
    .values({ id: "fd1", testId: "ft1", ...of, ...place, day: "2031-01-04", ...by })
    .run();
  orm.insert(fairValue).values({ allocationId: "fd1", look: 0, value: 2.5 }).run();
  orm
    .insert(fairStep)
    .values({
      testId: "ft1",
      number: 1,
      kind: "end",
      figures: null,
      why: "the season is over",
      day: "2031-03-04",
      ...by,
    })
    .run();
}
