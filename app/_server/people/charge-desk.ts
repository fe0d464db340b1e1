import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { readStudents } from "@/db/read/students";
import { insertCharge, updateChargeEnded } from "@/db/write/people";
import { currentInstant } from "../clock";
import type { Viewer } from "../gate";
import { DONE, type Outcome, refused } from "./account-desk";
import { chargesInForce } from "./charges-in-force";

/** Gives students to a coach from today on; whoever had them has them no more. All of them, or none. */
export function giveStudents(viewer: Viewer, data: FormData): Outcome {
  if (viewer.choice === "demo") return refused("demo");
  const { db, today } = viewer;
  return inTransaction(db, () => {
    const { charges, coaches } = chargesInForce(viewer);
    const coach = coaches.find(({ userId }) => userId === data.get("coach"));
    if (!coach) return refused("no-such-coach");
    const wished = data.getAll("students");
    const given = readStudents(db, viewer.scope).filter(({ id }) => wished.includes(id));
    if (given.length === 0) return refused("no-students");
    const recordedAt = currentInstant();
    for (const { id } of given) {
      const before = charges.filter((each) => each.studentId === id && each.kind === "own");
      // Given again to whoever has them: nothing begins anew.
      if (before.some((each) => each.coachId === coach.userId)) continue;
      for (const each of before) updateChargeEnded(db, each.id, { endedAt: recordedAt, endedBy: viewer.name });
      insertCharge(db, {
        ...{ id: randomUUID(), studentId: id, coachId: coach.userId, kind: "own", fromDay: today },
        ...{ untilDay: null, who: viewer.name, recordedAt },
      });
    }
    return DONE;
  });
}
