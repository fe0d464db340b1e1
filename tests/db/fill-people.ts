import type { Database } from "@/db/client";
import { authSession, invitation, signInTry, twoFactor, verification } from "@/db/schema-people";
import {
  carriedLook,
  erasure,
  familyLink,
  familyOpening,
  familyRequest,
  recordView,
  retentionNotice,
} from "@/db/schema-privacy";
import { insertAccount, insertCharge, insertPerson } from "@/db/write/people";
import { NOW } from "./academy-fixture";

/** Two people of academy `a1`, a coach with student `s1` in charge and an assistant, and a row in every table about people. */
export function fillPeople(db: Database): void {
  const at = new Date(NOW);
  const end = new Date("2031-03-02T10:00:00.000Z");
  for (const [userId, name] of [
    ["u1", "Coach"],
    ["u2", "Help"],
  ] as const)
    insertAccount(db, { userId, name, email: `${userId}@x.example`, passwordHash: "salt:hash", now: at });
  const added = { academyId: "a1", addedAt: NOW, addedBy: "Owner" };
  insertPerson(db, { ...added, userId: "u1", roles: ["owner", "coach"], assists: [] });
  insertPerson(db, { ...added, userId: "u2", roles: ["assistant"], assists: ["u1"] });
  const forever = { fromDay: "2031-01-01", untilDay: null } as const;
  insertCharge(db, {
    id: "ch1",
    studentId: "s1",
    coachId: "u1",
    kind: "own",
    ...forever,
    who: "Owner",
    recordedAt: NOW,
  });
  const { orm } = db;
  const times = { createdAt: at, updatedAt: at };
  orm
    .insert(authSession)
    .values({ id: "as1", token: "t", userId: "u1", expiresAt: end, ...times })
    .run();
  orm
    .insert(verification)
    .values({ id: "v1", identifier: "i", value: "v", expiresAt: end, ...times })
    .run();
  orm.insert(twoFactor).values({ id: "tf1", secret: "s", backupCodes: "b", userId: "u1" }).run();
  const asked = { academyId: "a1", who: "Owner", madeAt: NOW, expiresAt: NOW };
  orm
    .insert(invitation)
    .values({
      id: "in1",
      kind: "password",
      tokenHash: "h",
      name: "Coach",
      email: "u1@x.example",
      userId: "u1",
      ...asked,
    })
    .run();
  orm.insert(signInTry).values({ key: "k", wrong: 1, firstAt: 1, lastAt: 1, waitUntil: 1 }).run();
  orm
    .insert(familyLink)
    .values({ id: "l1", studentId: "s1", tokenHash: "lh", label: "Mother", who: "Coach", madeAt: NOW, expiresAt: NOW })
    .run();
  orm.insert(familyOpening).values({ linkId: "l1", openedAt: NOW }).run();
  orm.insert(familyRequest).values({ id: "r1", studentId: "s1", linkId: "l1", kind: "erase", askedAt: NOW }).run();
  const seen = { who: "Coach", role: "coach", what: "page", place: "/students/[studentId]" } as const;
  orm
    .insert(recordView)
    .values({ studentId: "s1", ...seen, viewedAt: NOW })
    .run();
  orm
    .insert(retentionNotice)
    .values({
      id: "n1",
      academyId: "a1",
      kind: "link",
      studentId: "s1",
      linkId: "l1",
      announcedAt: NOW,
      dueDay: "2031-04-01",
    })
    .run();
  orm
    .insert(erasure)
    .values({ id: "e1", academyId: "a1", erasedAt: NOW, who: "Owner", reason: "asked", sessions: 1, readings: 2 })
    .run();
  const { sessionId, batchId } = db.sqlite
    .prepare<[], { sessionId: string; batchId: string }>(
      "SELECT session.id AS sessionId, import_batch.id AS batchId FROM session, import_batch WHERE student_id = 's1' LIMIT 1",
    )
    .get() ?? { sessionId: "", batchId: "" };
  orm
    .insert(carriedLook)
    .values({
      ...{ sessionId, studentId: "s1", fundamentalId: "grip-v", clubGroup: "short-irons", saidBy: "Elsewhere" },
      ...{ policyVersion: "1", noiseModelName: "fallback-1", body: "{}", batchId },
    })
    .run();
}
