import { readDrillUse } from "@/db/read/drill-use";
import { readAssignmentLog, readDrills } from "@/db/read/drills";
import { readEvents } from "@/db/read/events";
import { readSaidPain } from "@/db/read/practice";
import type { ProposeSource } from "@/lib/report/propose-drill";
import { stopFirst } from "@/lib/report/stop-first";
import { type StudentViewer, seesPain } from "../gate";
import { restDaysOf } from "./rest-days";

/** What a proposal of a drill rests on. */
export function proposeSource(viewer: StudentViewer): ProposeSource {
  const { db, scope, student, today } = viewer;
  return {
    library: readDrills(db, scope),
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
