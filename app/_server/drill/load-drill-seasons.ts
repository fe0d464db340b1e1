import { readComparedAnalyses, readComparedAssignments } from "@/db/read/compared";
import { readDrills } from "@/db/read/drills";
import { readStudents } from "@/db/read/students";
import { currentGroups } from "@/lib/domain/club-grouping";
import { goalOn } from "@/lib/domain/goal-on";
import { buildDrillSeasons, type DrillSeason } from "@/lib/report/build-drill-seasons";
import type { DrillSeasonsPage } from "@/lib/report/drill-seasons-model";
import { POLICY } from "@/lib/verdict/policy";
import { linkTables } from "../archive/table-links";
import type { Viewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import type { Judged } from "../worker/tasks";
import { chooseGroup } from "./choose-group";

/** The title of the page's document: no drill's name stands in it. */
export function drillSeasonsTitle({ words }: Viewer): string {
  return words.say("document-title", { page: words.say("drill-seasons") });
}

/** One drill over everybody whom the viewer may see; null: there is none of that name. */
export async function loadDrillSeasons(
  viewer: Viewer,
  drillId: string,
  club: string | undefined,
): Promise<DrillSeasonsPage | null> {
  const { db, scope, words } = viewer;
  const drill = readDrills(db, scope).find(({ id }) => id === drillId);
  const { fundamentals, grouping } = await loadRules(viewer);
  const fundamental = fundamentals.find(({ id }) => id === drill?.fundamentalId);
  if (drill === undefined || fundamental === undefined) return null;
  const analyses = readComparedAnalyses(db, scope, { fundamentalId: fundamental.id, policyVersion: POLICY.version });
  const given = new Map(
    // A student's first time on it: by first day, so the latest entry that is set is the earliest.
    readComparedAssignments(db, scope, fundamental.id)
      .filter((each) => each.drill === drill.name)
      .toReversed()
      .map((each) => [each.studentId, each]),
  );
  const measured = analyses.filter(({ studentId }) => given.has(studentId));
  const groups = currentGroups(grouping).map(({ id }) => id);
  const clubGroup = chooseGroup(groups, measured, club);
  const aliases = new Map(readStudents(db, scope).map(({ id, alias }) => [id, alias]));
  const seasons = measured
    .filter((each) => each.clubGroup === clubGroup)
    .flatMap(({ studentId, body }): DrillSeason[] => {
      const had = given.get(studentId);
      const alias = aliases.get(studentId);
      if (had === undefined || alias === undefined) return [];
      const { track } = JSON.parse(body) as Judged;
      return [
        {
          ...{ studentId, alias, start: had.start, end: had.end, logged: had.days, goal: goalOn(track, had.start) },
          films: track.sessions.map(({ date, use, swings }) => ({ date, use: use !== false, swings })),
        },
      ];
    })
    .toSorted((a, b) => (a.start < b.start ? -1 : a.start > b.start ? 1 : a.alias < b.alias ? -1 : 1));
  const page = buildDrillSeasons(words, {
    ...{ drill, fundamental, clubGroup, grouping, seasons, unmeasured: given.size - seasons.length },
    groups: groups.filter((group) => measured.some((each) => each.clubGroup === group)),
  });
  return linkTables(words, "drill-seasons", { drill: drill.id, club: clubGroup ?? undefined }, page);
}
