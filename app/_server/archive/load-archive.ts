import { readArchivedRules } from "@/db/read/archive-rules";
import {
  readArchivedAnalyses,
  readArchivedRereads,
  readArchivedStudent,
  readArchivedStudentIds,
} from "@/db/read/archive-student";
import { readToldOfStudent } from "@/db/read/archive-told";
import { ARCHIVE_FORMAT, ARCHIVE_VERSION, type Archive, type ArchivedStudent } from "@/lib/domain/archive";
import type { ToldOfStudent } from "@/lib/domain/archive-told";
import type { StudentScope } from "@/lib/domain/scope";
import { selectArchiveRules } from "@/lib/domain/select-archive-rules";
import { POLICY } from "@/lib/verdict/policy";
import { trackName } from "@/lib/verdict/track-history";
import { admitToStudent, seesPain, type Viewer } from "../gate";
import { type Listing, loadListing } from "../roster/listing";
import { loadRules } from "../roster/load-verdicts";

function archivedStudent(viewer: Viewer, scope: StudentScope, listing: Listing): ArchivedStudent {
  const { studentId } = scope;
  return {
    ...readArchivedStudent(viewer.db, scope, seesPain(viewer, scope)),
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

/** An archive, and what is told beside the records in it and can't be put back. */
export interface LoadedArchive {
  readonly archive: Archive;
  readonly told: readonly ToldOfStudent[];
  /** Of how many of its students nothing goes out of what hurts, because whoever takes it may not know that. */
  readonly withoutPain: number;
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
    saidBy: viewer.academy.name,
    rules: whose === "everybody" ? rules : selectArchiveRules(rules, students),
    students,
    rereads: readArchivedRereads(db, scope, scopes),
  };
  return {
    archive,
    told: scopes.map((student) => readToldOfStudent(db, student)),
    withoutPain: scopes.filter((student) => seesPain(viewer, student) === null).length,
  };
}
