import { readCharges } from "@/db/read/people";
import { chargeOn } from "@/lib/domain/charge";
import type { Viewer } from "../gate";
import { coachesHere } from "../people/coaches-here";

/** Which coaches have students of a roster in charge today. */
export interface InCharge {
  /** Ids by student; nobody has whoever isn't there. */
  readonly byStudent: ReadonlyMap<string, readonly string[]>;
  /** Those who have one of the students in charge, by name. */
  readonly coaches: readonly { readonly value: string; readonly label: string }[];
}

/** Who of an academy’s coaches has which of some students in charge today. */
export function chargesOf({ db, academy, today }: Viewer, seen: ReadonlySet<string>): InCharge {
  const people = coachesHere(db, academy.id);
  const coaching = new Set(people.map((each) => each.userId));
  const byStudent = new Map<string, string[]>();
  for (const charge of readCharges(db, academy.id))
    if (seen.has(charge.studentId) && coaching.has(charge.coachId) && chargeOn(charge, today) === "in-force")
      byStudent.set(charge.studentId, [...(byStudent.get(charge.studentId) ?? []), charge.coachId]);
  const having = new Set([...byStudent.values()].flat());
  return {
    byStudent,
    coaches: people.flatMap(({ userId, name }) => (having.has(userId) ? [{ value: userId, label: name }] : [])),
  };
}
