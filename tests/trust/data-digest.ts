import { existsSync } from "node:fs";
import path from "node:path";
import { digestTables } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { served } from "../e2e/served";

/**
 * What reading may write: the hour up to which a used log-in goes on, and what is computed again from the rest (the roster's
 * list and verdicts, by whichever page comes first after a change).
 */
const BY_READING = ["auth_session", "roster_list", "analysis", "look_noise"];

/** What every other table of both academies holds, as one text to compare. */
export async function digestData(): Promise<string> {
  const digests: Record<string, unknown> = {};
  for (const folder of ["demo", "academy"]) {
    const file = path.join(served.data, folder, "proofband.db");
    if (!existsSync(file)) continue;
    const db = openDatabase(file, "read");
    const tables = Object.entries(await digestTables(db)).filter(([name]) => !BY_READING.includes(name));
    digests[folder] = Object.fromEntries(tables);
    db.close();
  }
  return JSON.stringify(digests);
}
