import { type Database, inTransaction } from "@/db/client";
import type { KeptAnalysis } from "@/db/read/analyses";
import { readStaleStudents } from "@/db/read/current-analyses";
import { readNoiseModels } from "@/db/read/noise-models";
import { readStudent, readStudentAcademy } from "@/db/read/students";
import { deleteStaleAnalyses, insertAnalysis } from "@/db/write/analyses";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { buildTrackSummary } from "@/lib/report/track-summary";
import { POLICY } from "@/lib/verdict/policy";
import { type TrackHistory, trackHistories } from "@/lib/verdict/track-history";
import { whenWritable } from "../import/write-gate";
import { type ListingInput, trimmed } from "../roster/kept-tracks";
import { refreshRosterList } from "../roster/listing";
import { type AcademyRules, loadStudentRecord } from "../season/student-record";
import type { Judged } from "../worker/tasks";
import { workOn } from "./analysis-worker";
import { breathe } from "./breathe";
import { assignLooks, enginesModels, refitNoise } from "./refit-noise";

/** What a kept analysis holds: the judged track and its verdict; the roster's list is another thing and kept apart. */
export type AnalysisBody = Judged;

/** Work that is going on for an academy, so that two requests don't do it twice. */
const KEY = Symbol.for("proofband.refreshing");
const shared = globalThis as { [KEY]?: Map<string, Promise<void>> };

/** Judges one track with the models of its pool. */
export async function judgeHistory(db: Database, scope: AcademyScope, history: TrackHistory): Promise<Judged> {
  const models = enginesModels(readNoiseModels(db, scope, history.judged.pool));
  const { judged } = await workOn({ kind: "judge", track: history.judged, earlier: history.earlier, models });
  return judged;
}

/** Whether a student was erased while others were judged. */
function isErased(db: Database, studentId: string): boolean {
  return readStudentAcademy(db, studentId) === undefined;
}

async function refreshStudent(
  db: Database,
  scope: AcademyScope,
  student: StudentScope,
  rules: AcademyRules,
): Promise<void> {
  await whenWritable();
  if (isErased(db, student.studentId)) return;
  assignLooks(db, scope, student, rules);
  await breathe();
  if (isErased(db, student.studentId)) return;
  const record = loadStudentRecord(db, student, rules);
  const { revision } = readStudent(db, student);
  const made: KeptAnalysis[] = [];
  for (const history of trackHistories(record, rules.today)) {
    if (history.judged.sessions.length === 0) continue;
    const judged = await judgeHistory(db, scope, history);
    const { listedLooks } = judged;
    const whole: ListingInput = { ...buildTrackSummary(history, judged.verdict), listedLooks };
    const summary: ListingInput = { ...trimmed(whole), listedLooks };
    made.push({
      fundamentalId: history.fundamental.id,
      clubGroup: history.clubGroup,
      asOf: history.judged.sessions.at(-1)?.date ?? "",
      policyVersion: POLICY.version,
      noiseModel: judged.verdict.noiseModel,
      dataRevision: revision,
      summary: JSON.stringify(summary),
      body: JSON.stringify(judged satisfies AnalysisBody),
    });
  }
  await breathe();
  await whenWritable();
  if (isErased(db, student.studentId)) return;
  // One wait for the disk a student; what was changed meanwhile makes these stale, not wrong.
  inTransaction(db, () => {
    for (const analysis of made) insertAnalysis(db, student, analysis);
  });
}

async function refresh(
  db: Database,
  scope: AcademyScope,
  rules: AcademyRules,
  scopeOf: (id: string) => StudentScope,
): Promise<void> {
  const stale = readStaleStudents(db, scope, POLICY.version);
  if (stale.length === 0) return;
  await whenWritable();
  await refitNoise(db, scope, rules, scopeOf);
  for (const studentId of stale)
    if (!isErased(db, studentId)) await refreshStudent(db, scope, scopeOf(studentId), rules);
  await breathe();
  await whenWritable();
  deleteStaleAnalyses(db, scope, POLICY.version);
  refreshRosterList(db, scope);
}

/**
 * Judges anew whatever changed since it was last judged: noise models first, then looks, verdicts, and the roster's list.
 * Everything it writes can be computed again; it changes no reading and no look that was said.
 */
export function refreshAnalyses(
  db: Database,
  scope: AcademyScope,
  rules: AcademyRules,
  scopeOf: (id: string) => StudentScope,
): Promise<void> {
  shared[KEY] ??= new Map();
  const going = shared[KEY];
  const before = going.get(scope.academyId) ?? Promise.resolve();
  const mine = before.catch(() => undefined).then(() => refresh(db, scope, rules, scopeOf));
  going.set(scope.academyId, mine);
  return mine;
}
