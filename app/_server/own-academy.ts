import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { readAcademyIds } from "@/db/read/academies";
import { insertAcademy } from "@/db/write/academies";
import { currentInstant, dayIn, readClock } from "./clock";
import { openAcademyDatabase } from "./database";

/** What an owner says of a new academy. */
export interface NewAcademy {
  readonly name: string;
  readonly ownerName: string;
  /** IANA zone. */
  readonly zone: string;
  readonly locale: string;
}

/** Begins the viewer's own academy, empty. Pressed twice, or when there is one, it stays as it is. */
export async function startOwnAcademy(wanted: NewAcademy): Promise<"started" | "there"> {
  const db = await openAcademyDatabase("own");
  return inTransaction(db, () => {
    if (readAcademyIds(db).length > 0) return "there";
    const seasonStart = `${dayIn(wanted.zone, readClock()).slice(0, 4)}-01-01`;
    const kept = { fixedToday: null, seasonStart, createdAt: currentInstant() };
    insertAcademy(db, { id: randomUUID(), kind: "own", ...wanted, ...kept });
    return "started";
  });
}
