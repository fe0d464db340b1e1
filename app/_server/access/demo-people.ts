import { hashPassword } from "better-auth/crypto";
import { inTransaction } from "@/db/client";
import { readPeople } from "@/db/read/people";
import { readStudents } from "@/db/read/students";
import { insertAccount, insertAssists, insertCharge, insertPerson } from "@/db/write/people";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import type { Role } from "@/lib/domain/person";
import { instantOf, readClock } from "../clock";
import type { Viewer } from "../gate";

/** The password of every account of the demo; it stands on the page, and opens nothing but invented data on this machine. */
export const DEMO_PASSWORD = "two larches in the wind";

/** A ready account of the demo. */
export interface DemoPerson {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
  readonly assists: readonly string[];
  /** Ids of the students in their charge. */
  readonly charge: "most" | readonly string[];
}

/** The student whose films went from one coach to another. */
const HANDED_OVER = ["s02"];

export const DEMO_PEOPLE: readonly DemoPerson[] = [
  {
    userId: "wren",
    name: "Coach Wren",
    email: "wren@demo.example",
    roles: ["owner", "director", "coach"],
    assists: [],
    charge: "most",
  },
  {
    userId: "lark",
    name: "Coach Lark",
    email: "lark@demo.example",
    roles: ["coach"],
    assists: [],
    charge: HANDED_OVER,
  },
  {
    userId: "linnet",
    name: "Linnet",
    email: "linnet@demo.example",
    roles: ["assistant"],
    assists: ["wren"],
    charge: [],
  },
];

/** Gives the demo its accounts when it has none. */
export async function addDemoPeople({ db, scope, academy }: Viewer): Promise<void> {
  if (academy.kind !== "demo" || readPeople(db, academy.id).length > 0) return;
  const passwordHash = await hashPassword(DEMO_PASSWORD);
  // The demo's today stands still: nobody came after it.
  const [now, recordedAt] = [readClock(), instantOf(academy)];
  inTransaction(db, () => {
    const students = readStudents(db, scope).map((student) => student.id);
    const others = new Set(DEMO_PEOPLE.flatMap(({ charge }) => (charge === "most" ? [] : charge)));
    for (const { userId, name, email } of DEMO_PEOPLE) insertAccount(db, { userId, name, email, passwordHash, now });
    for (const { userId, roles } of DEMO_PEOPLE)
      insertPerson(db, {
        userId,
        academyId: academy.id,
        roles,
        assists: [],
        addedAt: recordedAt,
        addedBy: academy.ownerName,
      });
    for (const { userId, assists } of DEMO_PEOPLE) insertAssists(db, userId, assists);
    for (const { userId, name, charge } of DEMO_PEOPLE) {
      const mine = charge === "most" ? students.filter((id) => !others.has(id)) : charge;
      for (const studentId of mine)
        insertCharge(db, {
          ...{ id: `${userId}-${studentId}`, studentId, coachId: userId, kind: "own" },
          ...{ fromDay: SINCE_EVER, untilDay: null, who: name, recordedAt },
        });
    }
  });
}
