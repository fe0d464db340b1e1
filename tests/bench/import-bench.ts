import { createHash } from "node:crypto";
import { IN_MEMORY, openDatabase } from "@/db/client";
import { migrateDb } from "@/db/migrate";
import { insertAcademy } from "@/db/write/academies";
import { insertImport } from "@/db/write/imports";
import { insertStudent } from "@/db/write/students";
import { orderedFundamentals } from "@/lib/domain/catalogue";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { parseImport } from "@/lib/ingest/parse-import";
import { demoEntries } from "@/seed/demo-academy";
import { LEAD_HEEL } from "@/seed/demo-drills";
import type { DemoStudent } from "@/seed/demo-entries";
import { DEMO_SEASON_START, DEMO_TODAY } from "@/seed/demo-plan";
import { type Measured, measureLater } from "./measured";

const NOW = `${DEMO_TODAY}T08:00:00.000Z`;
const scope = { academyId: "bench", userId: null, students: "all" } as unknown as AcademyScope;

/** The demo's readings as a file in long form: one row a reading. */
function longFile(students: readonly DemoStudent[]): { readonly bytes: Uint8Array; readonly rows: number } {
  const lines = ["student,date,club,club group,reader,swing,fundamental,value,unit"];
  for (const { student, sessions } of students) {
    for (const { session } of sessions) {
      for (const swing of session.swings) {
        for (const reading of swing.readings) {
          const value = reading.value === null ? "n/m" : reading.value;
          const unit = { deg: "deg", "pct-stance": "% of stance", "pct-span": "%" }[reading.unit] ?? reading.unit;
          lines.push(
            [
              student.alias,
              session.day,
              session.club,
              session.clubGroup,
              session.reader,
              swing.number,
              reading.fundamentalId,
              value,
              unit,
            ].join(","),
          );
        }
      }
    }
  }
  return { bytes: new TextEncoder().encode(`${lines.join("\n")}\n`), rows: lines.length - 1 };
}

async function emptyAcademy(students: readonly DemoStudent[]) {
  const db = openDatabase(IN_MEMORY);
  await migrateDb(db);
  insertAcademy(db, {
    id: "bench",
    name: "Bench",
    ownerName: "Bench",
    zone: "Europe/Berlin",
    locale: "en",
    kind: "own",
    fixedToday: DEMO_TODAY,
    seasonStart: DEMO_SEASON_START,
    createdAt: NOW,
  });
  for (const { student, consents } of students)
    insertStudent(db, scope, student, consents[0] ?? null, { now: NOW, newId: () => `c-${student.id}` });
  return db;
}

/** Rows a second from the bytes of a file to rows on file. */
export async function importFigures(): Promise<readonly Measured[]> {
  const students = demoEntries();
  const { bytes, rows } = longFile(students);
  const fundamentals = orderedFundamentals([LEAD_HEEL]);
  const input = {
    fileName: "bench.csv",
    bytes,
    contentHash: createHash("sha256").update(bytes).digest("hex"),
    today: DEMO_TODAY,
    students: students.map(({ student }) => ({ ...student, consent: "given" as const })),
    fundamentals,
    grouping: SHORT_LIST,
    answers: new Map(),
    defaults: { reader: "Bench" },
  };
  const rate = (ms: number): string => `${Math.round(rows / (ms / 1000)).toLocaleString("en")} rows a second`;
  const parsed = await measureLater(
    `import: reading a file of ${rows} rows`,
    { times: 3, unmeasured: 1 },
    rate,
    async () => parseImport(input),
  );
  const databases = await Promise.all(Array.from({ length: 4 }, () => emptyAcademy(students)));
  const whole = await measureLater(
    `import: reading and writing a file of ${rows} rows`,
    { times: 3, unmeasured: 1 },
    rate,
    async (round) => {
      const { plan, issues, rowsReady } = parseImport(input);
      if (plan === null) throw new Error(`nothing to import: ${JSON.stringify(issues[0])}`);
      const db = databases[round];
      if (db === undefined) throw new RangeError(`no database for round ${round}`);
      let id = 0;
      const done = insertImport(db, scope, plan, {
        now: NOW,
        newId: () => `i${id++}`,
        scopeOf: (studentId) => ({ academyId: "bench", studentId }) as StudentScope,
      });
      if (done.kind !== "imported") throw new Error("the file was imported before");
      if (done.readings !== rowsReady) throw new Error(`${done.readings} of ${rowsReady} readings were written`);
    },
  );
  for (const db of databases) db.close();
  return [parsed, whole];
}
