import { randomUUID } from "node:crypto";
import path from "node:path";
import { digestTables } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { builtRoutes } from "../e2e/routes";
import { served } from "../e2e/served";
import { expect, test } from "../e2e/watched";
import { sendRaw } from "./raw-request";

// D15: opening pages changes no reading, nothing that was said, and nothing that lies unfinished.

const VIEWS = 500;
const AT_ONCE = 4;
const host = { Host: `127.0.0.1:${served.port}` };
const MEASURED = [
  "student",
  "consent",
  "session",
  "swing",
  "capture",
  "stated_capture_sd",
  "reading",
  "correction",
  "event",
  "goal_band",
  "drill_assignment",
  "asking",
  "priority_choice",
  "drill_decision",
  "film_plan",
  "told",
  "waiting",
  "owning_rule",
  "seen",
  "reread_draw",
  "noise_model",
  "look_noise",
  "reader_error_fit",
  "draft",
  "form_receipt",
];

async function digest(): Promise<Readonly<Record<string, unknown>>> {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    return await digestTables(db, MEASURED);
  } finally {
    db.close();
  }
}

test(`D15: ${VIEWS} views of all pages and downloads leave every table of what was measured as it was`, async () => {
  test.setTimeout(300_000);
  const pages = builtRoutes()
    .map((route) => route.path)
    .filter((each) => !each.startsWith("/_") && each !== "/absent");
  const students = Array.from({ length: 60 }, (_, at) => `/students/s${String(at + 1).padStart(2, "0")}`);
  // A form without an id leads to itself with one.
  const forms = students.map((each) => `${each}/sessions/new?draft=${randomUUID()}`);
  const all = [...pages, ...students, ...forms];
  const before = await digest();
  const failures: string[] = [];
  let [next, shown] = [0, 0];
  const look = async (): Promise<void> => {
    while (next < VIEWS) {
      const each = all[next++ % all.length] ?? "/";
      const { status } = await sendRaw("GET", each, host);
      if (status === 200) shown++;
      if (status >= 500 || status === 429) failures.push(`${each}: ${status}`);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, look));
  expect(failures).toEqual([]);
  expect(await digest()).toEqual(before);
  // Some addresses only lead on, or take what is sent.
  expect(shown).toBeGreaterThan(0.7 * VIEWS);
  console.log(`D15: ${VIEWS} views, ${shown} of them shown, of ${all.length} addresses, ${MEASURED.length} tables`);
});
