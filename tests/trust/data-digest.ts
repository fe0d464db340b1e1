import { existsSync } from "node:fs";
import path from "node:path";
import { digestTables } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { served } from "../e2e/served";

/** What every table of both academies holds, as one text to compare. */
export async function digestData(): Promise<string> {
  const digests: Record<string, unknown> = {};
  for (const folder of ["demo", "academy"]) {
    const file = path.join(served.data, folder, "proofband.db");
    if (!existsSync(file)) continue;
    const db = openDatabase(file, "read");
    digests[folder] = await digestTables(db);
    db.close();
  }
  return JSON.stringify(digests);
}
