import { readDrillsDue } from "@/db/read/drills-due";
import { buildDrillsDue, type DrillsDuePart } from "@/lib/report/build-drills-due";
import type { Viewer } from "../gate";
import { type AcademyRules, loadAcademyRules } from "../season/student-record";

/** The drills that are to be measured again, of every student whom the viewer may see. */
export function loadDrillsDue(
  { words, db, scope, academy, today }: Viewer,
  { fundamentals }: Pick<AcademyRules, "fundamentals"> = loadAcademyRules(db, scope, academy),
): DrillsDuePart {
  return buildDrillsDue(words, { due: readDrillsDue(db, scope, today), fundamentals, today });
}
