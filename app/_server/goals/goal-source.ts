import { notFound } from "next/navigation";
import { readStudent } from "@/db/read/students";
import { type ClubGrouping, currentGroups } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import { goalSeries, type RecordedBand } from "@/lib/domain/goal-band";
import type { Student } from "@/lib/domain/student";
import type { GoalsSource } from "@/lib/report/build-goals";
import { sayClubGroup } from "@/lib/words/say-club";
import { daysHere } from "../clock";
import type { StudentViewer, Viewer } from "../gate";
import type { StudentVerdicts } from "../roster/load-verdicts";
import { loadAcademyRules } from "../season/student-record";
import { chooseClubGroup } from "../settings/club-links";

/** What the address of a page of bands says. */
export interface AskedGoal {
  readonly fundamental?: string;
  readonly club?: string;
}

/** The academy's part of a page of bands. */
export interface GoalRoom {
  readonly source: GoalsSource;
  readonly fundamentals: readonly Fundamental[];
  readonly grouping: ClubGrouping;
  /** Every band of the academy and of ages. */
  readonly all: readonly RecordedBand[];
}

/** Whom a band may reach: everybody's, an age's if that is or was the student's own, and the student's. */
function concerns(band: RecordedBand, student: Student | null): boolean {
  if (band.scope === "academy") return true;
  if (band.scope === "student") return band.studentId === student?.id;
  if (student === null) return true;
  if (student.birthYear === null) return false;
  // An age that was left behind decided what was said then.
  return (
    band.ageFrom === null ||
    Number(band.from.slice(0, 4)) - student.birthYear <= (band.ageTo ?? Number.POSITIVE_INFINITY)
  );
}

/**
 * What a page of bands rests on; there is no such page for a fundamental that the academy doesn't know.
 *
 * @param tracks of the student, for what was said under the bands; none: nothing of that is told
 */
export function loadGoalRoom(
  viewer: Viewer | StudentViewer,
  asked: AskedGoal,
  tracks: StudentVerdicts["tracks"] = [],
): GoalRoom {
  const { db, scope, words, academy, today } = viewer;
  const { fundamentals, bands, grouping } = loadAcademyRules(db, scope, academy);
  const all = bands as readonly RecordedBand[];
  const fundamental = fundamentals.find(({ id }) => id === (asked.fundamental ?? fundamentals[0]?.id));
  if (fundamental === undefined) notFound();
  const mine = "student" in viewer ? viewer : null;
  const own = tracks.filter(({ history }) => history.fundamental.id === fundamental.id);
  const groups = currentGroups(grouping);
  const clubGroup =
    groups.find(({ id }) => id === asked.club)?.id ??
    chooseClubGroup(grouping, own.length === 0 ? tracks : own, undefined) ??
    groups.find(({ id }) => id === "iron")?.id ??
    groups[0]?.id;
  if (clubGroup === undefined) notFound();
  const student = mine === null ? null : readStudent(db, mine.student);
  const track = own.find(({ history }) => history.clubGroup === clubGroup) ?? null;
  return {
    source: {
      ...{ student, fundamental, clubGroup, track, today },
      clubName: sayClubGroup(words, grouping, clubGroup),
      bands: all.filter(
        (band) => band.fundamentalId === fundamental.id && band.clubGroup === clubGroup && concerns(band, student),
      ),
      dayOf: daysHere(academy),
    },
    fundamentals,
    grouping,
    all: all.filter(({ scope: whose }) => whose !== "student"),
  };
}

/** Whether a band of its own stands there that could be given back. */
export function ownStands({ source }: GoalRoom): "stands" | "none" {
  const scopes = source.student === null ? ["academy", "age-range"] : ["student"];
  const latest = new Map(
    source.bands
      .filter(({ scope, replaced }) => scopes.includes(scope) && replaced !== true)
      .map((band) => [goalSeries(band), band]),
  );
  return [...latest.values()].some(({ low, high }) => low !== null || high !== null) ? "stands" : "none";
}
