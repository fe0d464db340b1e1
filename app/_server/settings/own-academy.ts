import { randomUUID } from "node:crypto";
import { type Database, inTransaction } from "@/db/client";
import { readAcademyIds } from "@/db/read/academies";
import { insertAcademy } from "@/db/write/academies";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import { currentInstant } from "../clock";
import { openAcademyDatabase } from "../database";

/** What an owner says of a new academy. */
export interface NewAcademy {
  readonly name: string;
  readonly ownerName: string;
  /** IANA zone. */
  readonly zone: string;
  readonly locale: string;
}

/** Begins an academy in a database, empty. Where there is one, it stays as it is. */
export function beginAcademy(db: Database, wanted: NewAcademy): "started" | "there" {
  return inTransaction(db, () => {
    if (readAcademyIds(db).length > 0) return "there";
    // Until the owner sets a season, it begins with the first session on file.
    const kept = { fixedToday: null, seasonStart: SINCE_EVER, createdAt: currentInstant() };
    insertAcademy(db, { id: randomUUID(), kind: "own", ...wanted, ...kept });
    return "started";
  });
}

/** Begins the viewer's own academy, empty. Pressed twice, or when there is one, it stays as it is. */
export async function startOwnAcademy(wanted: NewAcademy): Promise<"started" | "there"> {
  return beginAcademy(await openAcademyDatabase("own"), wanted);
}
