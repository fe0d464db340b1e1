import { type Charge, readCharges, readPeople } from "@/db/read/people";
import { readStudents } from "@/db/read/students";
import type { Person } from "@/lib/domain/person";
import { type Viewer, wholeAcademy } from "../gate";

/** Who has whom in charge today. */
export interface ChargesInForce {
  /** Those in force, of people who coach here. */
  readonly charges: readonly Charge[];
  /** Everybody who coaches here, by name. */
  readonly coaches: readonly Person[];
  /** Ids of the students whom nobody has. */
  readonly nobodys: readonly string[];
}

/** An academy's charges of today. Of students only ids: whoever runs the people may see no student. */
export function chargesInForce(viewer: Viewer): ChargesInForce {
  const { db, academy, today } = viewer;
  const coaches = readPeople(db, academy.id).filter((each) => each.endedAt === null && each.roles.includes("coach"));
  const ids = new Set(coaches.map((each) => each.userId));
  const charges = readCharges(db, academy.id).filter(
    (each) =>
      ids.has(each.coachId) &&
      each.endedAt === null &&
      each.fromDay <= today &&
      (each.untilDay === null || each.untilDay >= today),
  );
  const held = new Set(charges.map((each) => each.studentId));
  const nobodys = readStudents(db, wholeAcademy(viewer.scope)).flatMap(({ id }) => (held.has(id) ? [] : [id]));
  return { charges, coaches, nobodys };
}
