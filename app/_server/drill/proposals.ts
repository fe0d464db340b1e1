import { readDrillUse } from "@/db/read/drill-use";
import { readAssignmentLog, readDrills } from "@/db/read/drills";
import { readEvents } from "@/db/read/events";
import { readSaidPain } from "@/db/read/practice";
import { isOffered } from "@/lib/domain/drill-version";
import type { ProposeSource } from "@/lib/report/propose-drill";
import { stopFirst } from "@/lib/report/stop-first";
import { type StudentViewer, seesPain } from "../gate";
import { restDaysOf } from "./rest-days";

/** The library as a student’s forms know it: what was retired is offered no more, but to whom it was given before. */
export function libraryFor({ db, scope, student, today }: StudentViewer) {
  const own = new Set(readAssignmentLog(db, student).map(({ drillId }) => drillId));
  return readDrills(db, scope).map((drill) => ({
    ...drill,
    offered: isOffered(drill, today) || own.has(drill.id) ? ("yes" as const) : ("no" as const),
  }));
}

/** What a proposal of a drill rests on. */
export function proposeSource(viewer: StudentViewer): ProposeSource {
  const { db, scope, student, today } = viewer;
  return {
    library: libraryFor(viewer).filter(({ offered }) => offered === "yes"),
    use: readDrillUse(db, scope),
    own: readAssignmentLog(db, student),
    rest: restDaysOf(viewer),
    today,
  };
}

/** Why no drill is given to the student today, in sentences; empty: nothing stands against it. */
export function whyStop(viewer: StudentViewer): readonly string[] {
  const { words, db, student, today } = viewer;
  const pain = seesPain(viewer, student);
  return stopFirst(words, {
    events: readEvents(db, student),
    pain: pain === null ? null : readSaidPain(db, pain),
    today,
  });
}
