import { createHash } from "node:crypto";
import type { Database } from "@/db/client";
import { readCurrentLines, readCurrentSummaries } from "@/db/read/current-analyses";
import { readFileStamp } from "@/db/read/file-stamp";
import type { AcademyScope } from "@/lib/domain/scope";
import type { TrackSummary } from "@/lib/report/track-summary";
import { POLICY } from "@/lib/verdict/policy";
import type { ListedLook } from "@/lib/verdict/roster-list";

/** What the roster's list reads of one analysis. */
export type ListingInput = TrackSummary & { readonly listedLooks: readonly ListedLook[] };

/** The tracks of one student as they are kept in memory. */
interface KeptStudent {
  /** All that names the student's analyses: the tracks hold as long as it does. */
  readonly lines: string;
  readonly tracks: readonly TrackSummary[];
  /** Of the same tracks, in their order: what the roster's list reads of them. */
  readonly listed: readonly (readonly ListedLook[])[];
}

/** The analyses in force of a whole academy, in memory. */
export interface KeptTracks {
  readonly db: Database;
  fileStamp: string;
  /** Of all that names the analyses: the roster's list holds as long as it does. */
  readonly inputDigest: string;
  readonly byStudent: ReadonlyMap<string, KeptStudent>;
}

/** Academies whose tracks lie in memory: a process serves the demo and one of its own. */
const KEPT_ACADEMIES = 2;

/** Students whose summaries are taken off the disk at once: their text and what is read out of it needn't lie there for all. */
const AT_ONCE = 100;

// On the global object: the bundler may load this file more than once in one process.
const KEY = Symbol.for("proofband.kept-tracks");
const shared = globalThis as { [KEY]?: Map<string, KeptTracks> };

function memory(): Map<string, KeptTracks> {
  shared[KEY] ??= new Map();
  return shared[KEY];
}

/** What lists of tracks need, of a summary before it is kept or as one was kept before: looks only where an earlier change is drawn, since they are most of a summary. */
export function trimmed({ listedLooks: _, ...summary }: ListingInput): TrackSummary {
  const { looks, ...verdict } = summary.verdict;
  return { ...summary, verdict: { ...verdict, ...(verdict.changes.length > 1 && looks ? { looks } : {}) } };
}

/** The summaries of some students as text, a hundred students at a time. */
function* summariesOf(db: Database, whole: AcademyScope, studentIds: readonly string[]): Generator<ListingInput> {
  for (let from = 0; from < studentIds.length; from += AT_ONCE) {
    const scope = { ...whole, students: studentIds.slice(from, from + AT_ONCE) };
    for (const row of readCurrentSummaries(db, scope, POLICY.version)) yield JSON.parse(row.summary) as ListingInput;
  }
}

function readAnew(db: Database, whole: AcademyScope, before: KeptTracks | undefined): KeptTracks {
  const fileStamp = readFileStamp(db);
  const lines = readCurrentLines(db, whole, POLICY.version);
  const hash = createHash("sha256");
  for (const own of lines) hash.update(own.lines);
  const inputDigest = hash.digest("hex");
  if (before?.inputDigest === inputDigest) {
    before.fileStamp = fileStamp;
    return before;
  }
  const byStudent = new Map<string, KeptStudent>();
  const changed = new Map<string, { tracks: TrackSummary[]; listed: (readonly ListedLook[])[] }>();
  const now = new Map(lines.map((own) => [own.studentId, own.lines]));
  for (const [studentId, own] of now) {
    const kept = before?.byStudent.get(studentId);
    if (kept?.lines === own) byStudent.set(studentId, kept);
    else changed.set(studentId, { tracks: [], listed: [] });
  }
  for (const input of summariesOf(db, whole, [...changed.keys()])) {
    changed.get(input.studentId)?.tracks.push(trimmed(input));
    changed.get(input.studentId)?.listed.push(input.listedLooks);
  }
  for (const [studentId, read] of changed) byStudent.set(studentId, { lines: now.get(studentId) ?? "", ...read });
  // In the order of the lines, whoever was read again: a list over them is the same text then.
  const inOrder = [...now.keys()].flatMap((id) => {
    const kept = byStudent.get(id);
    return kept ? [[id, kept] as const] : [];
  });
  return { db, fileStamp, inputDigest, byStudent: new Map(inOrder) };
}

/**
 * The analyses in force of a whole academy. They lie in memory and only what was judged anew is read again: the text of
 * two thousand students' tracks takes a second to read. Whoever shows them cuts them to the students whom a viewer may see.
 */
export function keptTracks(db: Database, whole: AcademyScope): KeptTracks {
  const found = memory().get(whole.academyId);
  const before = found?.db === db ? found : undefined;
  if (before?.fileStamp === readFileStamp(db)) return before;
  const kept = readAnew(db, whole, before);
  memory().delete(whole.academyId);
  memory().set(whole.academyId, kept);
  for (const academyId of [...memory().keys()].slice(0, -KEPT_ACADEMIES)) memory().delete(academyId);
  return kept;
}

/** Lets go of an academy's tracks: somebody of it was erased. */
export function forgetKeptTracks(academyId: string): void {
  memory().delete(academyId);
}
