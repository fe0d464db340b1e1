import { existsSync } from "node:fs";
import path from "node:path";
import { PROGRAM } from "@/app/_server/keeping/program";
import { digestTables } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { served } from "../e2e/served";

/**
 * What reading may write: that somebody looked, the hour up to which a used log-in goes on, and what is computed again from the rest (the roster's
 * list and verdicts, by whichever page comes first after a change).
 */
const BY_READING = ["record_view", "auth_session", "roster_list", "analysis", "look_noise"];

/** What is written once a minute, whoever reads: the latest time that the clock has shown, and what the program has done. */
const BY_CLOCK = ["academy", "preference"];

/** What every other table of both academies holds, as one text to compare; by default of the tests’ own server. */
export async function digestData(data: string = served.data): Promise<string> {
  const digests: Record<string, unknown> = {};
  for (const folder of ["demo", "academy"]) {
    const file = path.join(data, folder, "proofband.db");
    if (!existsSync(file)) continue;
    const db = openDatabase(file, "read");
    const tables = Object.entries(await digestTables(db)).filter(
      ([name]) => !BY_READING.includes(name) && !BY_CLOCK.includes(name),
    );
    // Of two tables what the clock writes is left out, and the rest compared.
    const academy = db.sqlite.prepare<[], object>("SELECT * FROM academy").all();
    const preferences = db.sqlite.prepare("SELECT * FROM preference WHERE viewer <> ?").all(PROGRAM);
    const stands = academy.map((row) => ({ ...row, clock_seen_at: null }));
    digests[folder] = { ...Object.fromEntries(tables), stands, preferences };
    db.close();
  }
  return JSON.stringify(digests);
}
