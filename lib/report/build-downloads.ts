import type { Reading, Session } from "@/lib/domain/session";
import type { Student } from "@/lib/domain/student";
import type { ContactCounts } from "@/lib/verdict/contact-counts";
import type { StudentRecord } from "@/lib/verdict/track-history";
import { buildCsv } from "./csv";
import type { FundamentalSource } from "./fundamental-source";
import { saidVerdict } from "./said";
import type { TrackSummary } from "./track-summary";

/** Columns of a student's readings as a file; the import reads the same ones. */
const READING_COLUMNS = [
  "student",
  "date",
  "club group",
  "club",
  "reader",
  "circumstance",
  "swing",
  "fundamental",
  "value",
  "typed",
  "note",
  "read on",
] as const;

/** The day of reading of what was read back from an earlier film, by session, swing and fundamental; the rest was read with its session. */
export type ReadOnDays = ReadonlyMap<string, string>;

/** The name of a reading among the days of reading. */
export function readOnKey(reading: Pick<Reading, "sessionId" | "swing" | "fundamentalId">): string {
  return `${reading.sessionId} ${reading.swing} ${reading.fundamentalId}`;
}

/** Every reading in force of one student in long form; it can be imported again. */
export function buildReadingsCsv(record: StudentRecord, readOn: ReadOnDays = new Map()): string {
  const sessions = new Map(record.sessions.map((session) => [session.id, session]));
  const rows = record.readings.flatMap((reading) => {
    const session = sessions.get(reading.sessionId);
    return session ? [[...readingRow(record.student, session, reading), readOn.get(readOnKey(reading)) ?? ""]] : [];
  });
  return buildCsv(READING_COLUMNS, rows);
}

function readingRow(student: Student, session: Session, reading: Reading): (string | number | null)[] {
  return [
    student.alias,
    session.day,
    session.clubGroup,
    session.club,
    session.reader,
    session.circumstance,
    reading.swing,
    reading.fundamentalId,
    reading.value ?? "not measurable",
    reading.typed,
    session.note,
  ];
}

function isOf({ session }: { readonly session: Session }) {
  return ({ sessionId }: { readonly sessionId: string }): boolean => sessionId === session.id;
}

/** The sessions of one fundamental with the verdict's numbers: those of the page. */
export function buildFundamentalCsv(source: FundamentalSource): string {
  return buildCsv(
    ["date", "judged", "swings", "mean", "camera sd", "values", "as read", "read on"],
    source.history.sessions.map((entry) => {
      const values = entry.swings.map((swing) => swing.value);
      return [
        entry.session.day,
        entry.apart === null ? "yes" : "no",
        values.length,
        values.reduce((sum, value) => sum + value, 0) / values.length,
        entry.captureSd,
        values.join(" "),
        entry.swings.map((swing) => swing.read).join(" "),
        [...new Set((source.readBack ?? []).filter(isOf(entry)).map((each) => each.readOn))].join(" "),
      ];
    }),
  );
}

/** The counts of solid strikes of one club group in order of time, and whether each enters the share. */
export function buildContactCsv(counts: ContactCounts): string {
  const rows = [...counts.counted.map((count) => ({ ...count, why: "yes" })), ...counts.apart];
  rows.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  return buildCsv(
    ["date", "solid", "balls", "in the share"],
    rows.map(({ day, solid, balls, why }) => [day, solid, balls, why]),
  );
}

/** Columns of the roster as a file. */
const ROSTER_COLUMNS = [
  "student",
  "fundamental",
  "club group",
  "sessions",
  "verdict",
  "position",
  "level",
  "low95",
  "high95",
  "change",
  "changed from",
  "changed to",
  "no change",
] as const;

/** Every track of the students given, one a row, as the pages say it; a student without a track has one row that says so by being empty. */
export function buildRosterCsv(
  students: readonly { readonly alias: string; readonly tracks: readonly TrackSummary[] }[],
): string {
  const rows = students.flatMap(({ alias, tracks }) =>
    tracks.length === 0 ? [[alias, ...ROSTER_COLUMNS.slice(1).map(() => null)]] : tracks.map(trackRow(alias)),
  );
  return buildCsv(ROSTER_COLUMNS, rows);
}

function trackRow(alias: string) {
  return ({ fundamentalId, clubGroup, verdict }: TrackSummary): (string | number | null)[] => {
    const change = verdict.listed === true ? verdict.change : null;
    return [
      alias,
      fundamentalId,
      clubGroup,
      verdict.sessions,
      saidVerdict(verdict),
      verdict.position,
      verdict.levelNow?.estimate ?? null,
      verdict.levelNow?.low95 ?? null,
      verdict.levelNow?.high95 ?? null,
      change?.size.estimate ?? null,
      change?.from ?? null,
      change?.to ?? null,
      verdict.evidence.noChange,
    ];
  };
}
