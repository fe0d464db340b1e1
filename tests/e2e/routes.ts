import { readFileSync } from "node:fs";
import path from "node:path";
import { openDatabase } from "@/db/client";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { addDemoFamily, demoPageId } from "./demo-family";
import { served } from "./served";

/** One route of the build with its variable parts filled in from the demo. */
export interface Route {
  readonly path: string;
  readonly kind: "page" | "route";
}

function firstOf(column: string, table: string): string {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    const value = db.sqlite.prepare<[], string>(`SELECT ${column} FROM ${table} LIMIT 1`).pluck().get();
    if (value === undefined) throw new Error(`the demo has no ${table}`);
    return value;
  } finally {
    db.close();
  }
}

/** What the academy itself named: students, drills, fundamentals of its own, its people, and the family's links; nobody translates it. */
export function academyNames(): ReadonlySet<string> {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    return new Set(
      db.sqlite
        .prepare<[], string>(
          `SELECT alias FROM student UNION SELECT name FROM drill UNION SELECT name FROM user
           UNION SELECT label FROM family_link UNION SELECT who FROM record_view
           UNION SELECT json_extract(definition, '$.ownName') FROM own_fundamental`,
        )
        .pluck()
        .all(),
    );
  } finally {
    db.close();
  }
}

/** A sample file as it lies in the demo after an upload that nobody has confirmed. */
function uploadedDraft(): string {
  const id = "uploaded-for-the-tests";
  const file = readFileSync(path.join(served.root, "seed", "samples", "deliberately-bad.csv")).toString("base64");
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"));
  try {
    const academyId = db.sqlite.prepare<[], string>("SELECT id FROM academy").pluck().get() ?? "";
    const body = JSON.stringify({ fileName: "deliberately-bad.csv", file, answers: [] });
    db.sqlite
      .prepare(
        "INSERT OR IGNORE INTO draft (id, academy_id, user_id, kind, body, updated_at) VALUES (?, ?, 'wren', 'import', ?, '')",
      )
      .run(id, academyId, body);
    return id;
  } finally {
    db.close();
  }
}

/** Of whom the demo has something of each kind. */
const RICH = "s01";
const OF_STUDENT = `student_id = '${RICH}'`;

/** An import as it lies in the demo, which has none of its own. */
function importedBatch(): string {
  const id = "imported-for-the-tests";
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"));
  try {
    const academyId = db.sqlite.prepare<[], string>("SELECT id FROM academy").pluck().get() ?? "";
    db.sqlite
      .prepare(
        `INSERT OR IGNORE INTO import_batch (id, academy_id, file_name, content_hash, form, rows, readings, answers, created_at)
         VALUES (?, ?, 'nothing-new.csv', ?, 'long', 3, 0, '{}', '2026-11-01T08:00:00.000Z')`,
      )
      .run(id, academyId, id);
    return id;
  } finally {
    db.close();
  }
}

/** How each variable part is filled. A part without an entry fails, so that no new route goes unseen. */
const PARTS: Readonly<Record<string, () => string>> = {
  studentId: () => RICH,
  sessionId: () => firstOf("id", `session WHERE ${OF_STUDENT}`),
  assignmentId: () => firstOf("id", `drill_assignment WHERE ${OF_STUDENT}`),
  drillId: () => firstOf("id", "drill"),
  eventId: () => firstOf("id", `event WHERE ${OF_STUDENT}`),
  readBackId: () => firstOf("id", `read_back WHERE ${OF_STUDENT}`),
  fundamental: () => BUILT_IN[0]?.id ?? "",
  ownId: () => firstOf("id", "own_fundamental"),
  draftId: uploadedDraft,
  batchId: importedBatch,
  drawId: () => firstOf("id", "reread_draw WHERE finished_on IS NULL"),
  name: () => "season-long.csv",
  userId: () => "lark",
  pageId() {
    addDemoFamily();
    return demoPageId("live");
  },
  requestId() {
    addDemoFamily();
    return "asked-for-the-tests";
  },
  token: () => "a-link-that-opens-nothing",
};

function fill(pattern: string): string {
  return pattern.replace(/\[([^\]]+)\]/g, (_whole, part: string) => {
    const value = PARTS[part];
    if (!value) throw new Error(`no value for the part ${part} of ${pattern}`);
    return encodeURIComponent(value());
  });
}

/** Every page and route that was built. */
export function builtRoutes(): Route[] {
  const file = path.join(served.root, ".next", "app-path-routes-manifest.json");
  const manifest = JSON.parse(readFileSync(file, "utf8")) as Record<string, string>;
  return Object.entries(manifest).map(([entry, pattern]) => ({
    path: fill(pattern),
    kind: entry.endsWith("/page") ? "page" : "route",
  }));
}

/** Every page that a person can be on. */
export function builtPages(): string[] {
  return (
    builtRoutes()
      .filter((route) => route.kind === "page" && !route.path.startsWith("/_"))
      // Behind a link there is something only in an own academy; people.spec.ts and family.spec.ts open one.
      .filter((route) => !/^\/(join|family)\//.test(route.path))
      .map((route) => route.path)
  );
}

/** The ids of all actions that were built. */
export function builtActions(): string[] {
  const file = path.join(served.root, ".next", "server", "server-reference-manifest.json");
  const manifest = JSON.parse(readFileSync(file, "utf8")) as { node?: Record<string, unknown> };
  return Object.keys(manifest.node ?? {});
}
