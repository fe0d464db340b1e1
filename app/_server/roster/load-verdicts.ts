import { readAskings } from "@/db/read/asking";
import { readCurrentAnalyses } from "@/db/read/current-analyses";
import { visibleBands } from "@/db/read/goal-bands";
import { type Asking, askingOf } from "@/lib/domain/asking";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { POLICY } from "@/lib/verdict/policy";
import { type StudentRecord, type TrackHistory, trackHistories } from "@/lib/verdict/track-history";
import { isJudging, noteJudged } from "../analysis/judging";
import { type AnalysisBody, refreshAnalyses } from "../analysis/refresh-analyses";
import { diskFailureOf } from "../door/disk-failure";
import { type StudentViewer, scopeForJudging, type Viewer, wholeAcademy } from "../gate";
import { type AcademyRules, loadAcademyRules, loadStudentRecord } from "../season/student-record";
import type { Judged } from "../worker/tasks";
import { loadListing, withListing } from "./listing";

/** A student's tracks as on file and as judged. */
export interface StudentVerdicts {
  readonly record: StudentRecord;
  readonly grouping: ClubGrouping;
  readonly tracks: readonly {
    readonly history: TrackHistory;
    readonly verdict: TrackVerdict;
    /** As it was judged, with its starting belief. */
    readonly judged: Judged;
    readonly asking: Asking | null;
  }[];
}

/** Judges whatever changed in the viewer's academy since it was last judged, by everybody's rules; returns the viewer's. */
export async function judgeAnew(viewer: Viewer): Promise<AcademyRules> {
  const whole = wholeAcademy(viewer.scope);
  const rules = loadAcademyRules(viewer.db, whole, viewer.academy);
  await refreshAnalyses(viewer.db, whole, rules, (studentId) => scopeForJudging(viewer.db, whole, studentId));
  return { ...rules, bands: visibleBands(viewer.scope, rules.bands) };
}

/**
 * The viewer's academy brought up to date: what a page shows was judged on what is on file. While a large import is being
 * judged pages don't wait for it: the frame says so, and they show what is judged so far. So it is where the disk takes
 * nothing of the judging: what was saved stays saved, and is judged by the first page that finds room.
 */
export async function loadRules(viewer: Viewer): Promise<AcademyRules> {
  const { academyId } = viewer.scope;
  if (isJudging(academyId)) return loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  try {
    const rules = await judgeAnew(viewer);
    noteJudged(academyId, "kept");
    return rules;
  } catch (error) {
    if (diskFailureOf(error) === null) throw error;
    noteJudged(academyId, "not-kept");
    return loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  }
}

/** Every track of one student with its verdict and what the roster's list says of it. */
export async function loadStudentVerdicts(viewer: StudentViewer): Promise<StudentVerdicts> {
  const rules = await loadRules(viewer);
  const record = loadStudentRecord(viewer.db, viewer.student, rules);
  const kept = new Map(
    readCurrentAnalyses(viewer.db, viewer.student, POLICY.version).map((row) => [
      `${row.fundamentalId} ${row.clubGroup}`,
      JSON.parse(row.body) as AnalysisBody,
    ]),
  );
  const listing = loadListing(viewer.db, viewer.scope);
  const askings = readAskings(viewer.db, viewer.student);
  return {
    record,
    grouping: rules.grouping,
    tracks: trackHistories(record, rules.today).flatMap((history) => {
      const judged = kept.get(`${history.fundamental.id} ${history.clubGroup}`);
      const { studentId, clubGroup } = history;
      const asking = askingOf(askings, { studentId, fundamentalId: history.fundamental.id, clubGroup });
      return judged ? [{ history, verdict: withListing(judged.verdict, listing), judged, asking }] : [];
    }),
  };
}
