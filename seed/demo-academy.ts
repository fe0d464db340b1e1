import { type DemoStudent, enterStudent } from "./demo-entries";
import type { StudentPlan } from "./demo-plan";
import { QUIET_SEED } from "./demo-quiet";
import { DEMO_STUDENTS } from "./demo-roster";
import seeds from "./demo-seeds.json";

/** The seed of a student: searched for those with a story, the common one for the others. */
export function seedOf(plan: StudentPlan): number {
  return (seeds.seeds as Readonly<Record<string, number>>)[plan.id] ?? QUIET_SEED;
}

/** Everything that is entered, student by student. */
export function demoEntries(): readonly DemoStudent[] {
  return DEMO_STUDENTS.map((plan) => enterStudent(plan, seedOf(plan)));
}
