import { readPreference } from "@/db/read/preferences";
import { readStudent } from "@/db/read/students";
import { insertPreference } from "@/db/write/preferences";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { Fundamental } from "@/lib/domain/fundamental";
import { isRead } from "@/lib/domain/fundamental-on";
import { chooseFirstColumns } from "@/lib/report/choose-first-columns";
import { ARRANGEMENTS, type Arrangement } from "@/lib/report/grid-model";
import { buildTrackSummary } from "@/lib/report/track-summary";
import { type StudentViewer, type Viewer, viewerKey } from "../gate";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { loadStudentWork } from "../season/load-work";
import { loadAcademyRules } from "../season/student-record";
import type { GridSource } from "./session-grid";

/** What a viewer may prefer of the grid, the first of each being the usual one. */
const CHOICES = { arrangement: ARRANGEMENTS, letters: ["on", "off"] } as const;

type Choice = keyof typeof CHOICES;

function preferred<Name extends Choice>(viewer: Viewer, name: Name): (typeof CHOICES)[Name][number] {
  const kept = readPreference(viewer.db, viewer.scope, viewerKey(viewer), `grid-${name}`);
  const choices: readonly (typeof CHOICES)[Name][number][] = CHOICES[name];
  return choices.find((choice) => choice === kept) ?? (CHOICES[name][0] as (typeof CHOICES)[Name][number]);
}

/** How the viewer likes the grid. */
export function gridChoices(viewer: Viewer): { readonly arrangement: Arrangement; readonly letters: "on" | "off" } {
  return { arrangement: preferred(viewer, "arrangement"), letters: preferred(viewer, "letters") };
}

function keep(viewer: Viewer, name: Choice, value: string): void {
  insertPreference(viewer.db, viewer.scope, { viewer: viewerKey(viewer), name: `grid-${name}`, value });
}

/** Keeps how the viewer likes the grid, from a form's fields `arrangement` and `letters`; anything else changes nothing. */
export function keepGridChoice(viewer: Viewer, data: FormData): void {
  for (const name of Object.keys(CHOICES) as Choice[]) {
    const value = data.get(name);
    const choices: readonly string[] = CHOICES[name];
    if (typeof value === "string" && choices.includes(value)) keep(viewer, name, value);
  }
}

/** Turns the lines of the grid from swings to checkpoints or back. */
export function turnGrid(viewer: Viewer): void {
  const turned: Record<Arrangement, Arrangement> = { swings: "columns", columns: "swings" };
  keep(viewer, "arrangement", turned[preferred(viewer, "arrangement")]);
}

/** The fundamentals that are read from films today: what the academy has retired of its own is no column any more. */
export function loadRead({ db, scope, academy, today }: Viewer): readonly Fundamental[] {
  return loadAcademyRules(db, scope, academy).fundamentals.filter((fundamental) => isRead(fundamental, today));
}

/**
 * What a student's grid is made of. Of what is on file only the choice of the first columns comes through: the readings
 * to come are taken blind.
 *
 * @param clubGroup whose tracks say what matters now
 */
export async function loadGridSource(viewer: StudentViewer, clubGroup: ClubGroup): Promise<GridSource> {
  const fundamentals = loadRead(viewer);
  const { tracks } = await loadStudentVerdicts(viewer);
  const ranked = tracks
    .filter(({ history }) => history.clubGroup === clubGroup)
    .map(({ history, verdict }) => ({
      fundamental: history.fundamental,
      summary: buildTrackSummary(history, verdict),
    }));
  return {
    studentId: viewer.student.studentId,
    fundamentals,
    first: chooseFirstColumns(fundamentals, ranked, loadStudentWork(viewer, clubGroup, "left-out").work),
    rest: ranked.length === 0 ? "open" : "shut",
    hand: readStudent(viewer.db, viewer.student).hand,
    ...gridChoices(viewer),
  };
}
