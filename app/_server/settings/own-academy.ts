import { randomUUID } from "node:crypto";
import { type Database, inTransaction } from "@/db/client";
import { readAcademyIds } from "@/db/read/academies";
import { readPeople } from "@/db/read/people";
import { insertAcademy } from "@/db/write/academies";
import { adoptAcademy, insertAccount, insertPerson } from "@/db/write/people";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import { currentInstant } from "../clock";
import { findAcademyDatabase, openAcademyDatabase } from "../database";

/** What an owner says of a new academy. */
export interface NewAcademy {
  readonly name: string;
  readonly ownerName: string;
  /** IANA zone. */
  readonly zone: string;
  readonly locale: string;
}

/** With what its first person will log in. */
export interface NewAccount {
  readonly email: string;
  /** As the log-in library made it of the password. */
  readonly passwordHash: string;
}

interface NewOwner extends NewAccount {
  readonly name: string;
  readonly academyId: string;
  readonly now: string;
}

// Whoever begins an academy is everything in it until others are invited.
function insertOwner(db: Database, { email, passwordHash, name, academyId, now }: NewOwner): string {
  const userId = randomUUID();
  insertAccount(db, { userId, name, email, passwordHash, now: new Date(now) });
  insertPerson(db, {
    userId,
    academyId,
    roles: ["owner", "director", "coach"],
    assists: [],
    addedAt: now,
    addedBy: name,
  });
  return userId;
}

/** Gives an academy from before there were accounts to its first person, with all that is in it. `taken`: it has one. */
export async function claimOwnAcademy(owner: NewAccount, name: string): Promise<"claimed" | "taken"> {
  const found = await findAcademyDatabase("own");
  if (!found) return "taken";
  const { db, academyId } = found;
  return inTransaction(db, () => {
    if (readPeople(db, academyId).length > 0) return "taken";
    const now = currentInstant();
    const userId = insertOwner(db, { ...owner, name, academyId, now });
    adoptAcademy(db, { userId, academyId, name, now, fromDay: SINCE_EVER }, randomUUID);
    return "claimed";
  });
}

/** Begins the viewer's own academy, empty. Pressed twice, or when there is one, it stays as it is. */
export async function startOwnAcademy(
  wanted: NewAcademy,
  owner: NewAccount | null = null,
): Promise<"started" | "there"> {
  const db = await openAcademyDatabase("own");
  return inTransaction(db, () => {
    if (readAcademyIds(db).length > 0) return "there";
    // Until the owner sets a season, it begins with the first session on file.
    const kept = { fixedToday: null, seasonStart: SINCE_EVER, createdAt: currentInstant() };
    const academyId = randomUUID();
    insertAcademy(db, { id: academyId, kind: "own", ...wanted, ...kept });
    if (owner) insertOwner(db, { ...owner, name: wanted.ownerName, academyId, now: kept.createdAt });
    return "started";
  });
}
