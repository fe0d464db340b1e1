import { readArchivedRules } from "@/db/read/archive-rules";
import {
  type ArchivedChange,
  readArchivedAnalyses,
  readArchivedChanges,
  readArchivedRereads,
  readArchivedStudent,
  readArchivedStudentIds,
} from "@/db/read/archive-student";
import { ARCHIVE_FORMAT, ARCHIVE_VERSION, type Archive, type ArchivedStudent } from "@/lib/domain/archive";
import type { StudentScope } from "@/lib/domain/scope";
import { selectArchiveRules } from "@/lib/domain/select-archive-rules";
import { POLICY } from "@/lib/verdict/policy";
import { trackName } from "@/lib/verdict/track-history";
import { admitToStudent, type Viewer } from "../gate";
import { type Listing, loadListing } from "../roster/listing";
import { loadRules } from "../roster/load-verdicts";

function archivedStudent(viewer: Viewer, scope: StudentScope, listing: Listing): ArchivedStudent {
  const { studentId } = scope;
  return {
    ...readArchivedStudent(viewer.db, scope),
    snapshots: readArchivedAnalyses(viewer.db, scope, POLICY.version).map(({ body, ...kept }) => {
      const entry = listing[trackName(studentId, kept.fundamentalId, kept.clubGroup)];
      return { ...kept, listed: entry?.latest ?? false, listedLooks: [...(entry?.looks ?? [])], body };
    }),
  };
}

function scopesOf(viewer: Viewer, ids: readonly string[]): StudentScope[] {
  return ids.map((id) => {
    const scope = admitToStudent(viewer, id);
    if (!scope) throw new Error("a student of another academy");
    return scope;
  });
}

/** An archive, and what was done to the records in it: that is told, and can't be put back. */
export interface LoadedArchive {
  readonly archive: Archive;
  readonly changes: readonly ArchivedChange[];
}

/** The academy's rules; a band of one student's is about that student, and goes out with nobody else's record. */
function rulesFor({ db, scope }: Viewer, students: readonly StudentScope[]): Archive["rules"] {
  const rules = readArchivedRules(db, scope);
  if (scope.students === "all") return rules;
  const mine = new Set([...scope.students, ...students.map(({ studentId }) => studentId)]);
  return { ...rules, goalBands: rules.goalBands.filter((band) => band.studentId === null || mine.has(band.studentId)) };
}

/** Everything on file of one student, or of everybody, with what is said now; read in one go, so that it fits together. */
export async function loadArchive(viewer: Viewer, whose: StudentScope | "everybody"): Promise<LoadedArchive> {
  await loadRules(viewer);
  const { db, scope } = viewer;
  const scopes = whose === "everybody" ? scopesOf(viewer, readArchivedStudentIds(db, scope)) : [whose];
  const listing = loadListing(db, scope);
  const students = scopes.map((student) => archivedStudent(viewer, student, listing));
  const rules = rulesFor(viewer, scopes);
  const archive: Archive = {
    format: ARCHIVE_FORMAT,
    version: ARCHIVE_VERSION,
    holds: whose === "everybody" ? "academy" : "student",
    rules: whose === "everybody" ? rules : selectArchiveRules(rules, students),
    students,
    rereads: readArchivedRereads(db, scope, scopes),
  };
  return { archive, changes: scopes.flatMap((student) => readArchivedChanges(db, student)) };
}
