import { type Charge, readCharges } from "@/db/read/people";
import { readStudentsHere } from "@/db/read/students";
import { chargeOn } from "@/lib/domain/charge";
import type { Person } from "@/lib/domain/person";
import { type Viewer, wholeAcademy } from "../gate";
import { coachesHere } from "./coaches-here";

/** Who has whom in charge today. */
export interface ChargesInForce {
  /** Those in force, of people who coach here. */
  readonly charges: readonly Charge[];
  /** Everybody who coaches here, by name. */
  readonly coaches: readonly Person[];
  /** Ids of the students whom nobody has; whoever has left needs nobody. */
  readonly nobodys: readonly string[];
}

/** An academy's charges of today. Of students only ids: whoever runs the people may see no student. */
export function chargesInForce(viewer: Viewer): ChargesInForce {
  const { db, academy, today } = viewer;
  const coaches = coachesHere(db, academy.id);
  const ids = new Set(coaches.map((each) => each.userId));
  const charges = readCharges(db, academy.id).filter(
    (each) => ids.has(each.coachId) && chargeOn(each, today) === "in-force",
  );
  const held = new Set(charges.map((each) => each.studentId));
  const nobodys = readStudentsHere(db, wholeAcademy(viewer.scope)).flatMap(({ id }) => (held.has(id) ? [] : [id]));
  return { charges, coaches, nobodys };
}
