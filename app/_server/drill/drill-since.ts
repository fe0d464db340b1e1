import { readDrillDecisions } from "@/db/read/drill-decisions";
import { readAssignmentLog } from "@/db/read/drills";
import { readEvents } from "@/db/read/events";
import { readPractice } from "@/db/read/practice";
import { type CountedDrill, type DrillPractice, drillPractice } from "@/lib/domain/drill-practice";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import type { DrillSince, SolidCount } from "@/lib/report/build-drill-since";
import { retentionOf } from "@/lib/report/retention-of";
import { contactCounts } from "@/lib/verdict/contact-counts";
import { retentionFilms } from "@/lib/verdict/retention-films";
import type { StudentViewer } from "../gate";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { chooseClubGroup } from "../settings/club-links";
import { restDaysOf } from "./rest-days";

/** What counts the practice of any drill of the student, of all its days or since one; every page that tells practice asks it. */
export function practiceCounter(viewer: StudentViewer): (given: CountedDrill, since?: string) => DrillPractice | null {
  const { db, student, today } = viewer;
  const rest = restDaysOf(viewer);
  const practice = readPractice(db, student);
  const decisions = readDrillDecisions(db, student);
  const events = readEvents(db, student);
  return (given, since) => {
    const remeasured = decisions.flatMap(({ assignmentId, remeasureWas }) =>
      assignmentId === given.id && remeasureWas !== null ? [remeasureWas] : [],
    );
    return drillPractice(given, practice, { today, remeasured, rest, events, since });
  };
}

/** Practice of every drill of the student, asked and logged, by the drill's id. */
export function practiceByDrill(viewer: StudentViewer): ReadonlyMap<string, DrillPractice> {
  const count = practiceCounter(viewer);
  const drills = readAssignmentLog(viewer.db, viewer.student);
  return new Map(
    drills.flatMap((given) => {
      const one = count(given);
      return one === null ? [] : [[given.id, one] as const];
    }),
  );
}

function solidOf(counted: readonly SolidCount[]): SolidCount {
  return counted.reduce((sum, { solid, balls }) => ({ solid: sum.solid + solid, balls: sum.balls + balls }), {
    solid: 0,
    balls: 0,
  });
}

/** What happened since a drill began, in the clubs in hand of its fundamental. */
export async function loadDrillSince(viewer: StudentViewer, given: AssignmentRecord): Promise<DrillSince> {
  const { db, student, today } = viewer;
  const { record, tracks, grouping } = await loadStudentVerdicts(viewer);
  const own = tracks.filter(({ history }) => history.fundamental.id === given.fundamentalId);
  const clubGroup = chooseClubGroup(grouping, own, undefined);
  const track = own.find(({ history }) => history.clubGroup === clubGroup);
  const practice = readPractice(db, student);
  const rest = restDaysOf(viewer);
  const counts = clubGroup
    ? contactCounts(record.sessions, clubGroup, { from: record.seasonStart, to: today }).counted
    : [];
  return {
    given,
    fundamental: record.fundamentals.find(({ id }) => id === given.fundamentalId),
    track: track
      ? {
          history: track.history,
          verdict: track.verdict,
          films: retentionFilms(track.history, practice, { from: given.start, loggedFrom: given.start, rest }),
          retention: retentionOf({ ...track, practice, drills: readAssignmentLog(db, student), rest }),
          href: `/students/${student.studentId}/${given.fundamentalId}?club=${track.history.clubGroup}`,
        }
      : null,
    practice: practiceByDrill(viewer).get(given.id) ?? null,
    contact: {
      before: solidOf(counts.filter(({ day }) => day < given.start)),
      since: solidOf(counts.filter(({ day }) => day >= given.start)),
    },
    rest,
  };
}
