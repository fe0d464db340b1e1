import { notFound } from "next/navigation";
import { readComparedAnalyses, readDrilledFundamentals } from "@/db/read/compared";
import { readDrills } from "@/db/read/drills";
import { readStudents } from "@/db/read/students";
import { currentGroups } from "@/lib/domain/club-grouping";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import { compareDrills } from "@/lib/drills/compare-drills";
import { buildComparedDrills } from "@/lib/report/build-compared-drills";
import type { ComparedDrillsPage } from "@/lib/report/compared-drills-model";
import { comparedGroups, tellComparison } from "@/lib/report/compared-groups";
import { POLICY } from "@/lib/verdict/policy";
import { linkTables } from "../archive/table-links";
import type { Viewer } from "../gate";
import { chargesOf } from "../roster/charges-of";
import { loadRules } from "../roster/load-verdicts";
import type { Judged } from "../worker/tasks";
import { chooseGroup } from "./choose-group";
import { comparedFields } from "./compared-fields";

export { comparedDrillsTitle } from "@/lib/report/build-compared-drills";

/** What the comparison is asked for. */
export interface AskedComparison {
  readonly for?: string | undefined;
  readonly club?: string | undefined;
  /** One of the groups by hand, age and coach; anything else: everybody. */
  readonly of?: string | undefined;
}

/** The comparison of everybody, or of the group that is asked for where that may be told. */
function compareGroup(viewer: Viewer, tracks: readonly ComparedTrack[], asked: string | undefined) {
  const { db, scope, words, today } = viewer;
  const trackOf = new Map(tracks.map((track) => [track.student, track]));
  const students = readStudents(db, scope).filter(({ id }) => trackOf.has(id));
  const { coaches, byStudent } = chargesOf(viewer, new Set(trackOf.keys()));
  const groups = comparedGroups(words, {
    ...{ students, coaches, today },
    coachesOf: (id) => byStudent.get(id) ?? [],
    drillsOf: (id) => trackOf.get(id)?.drills.map(({ drill }) => drill) ?? [],
  });
  const group = groups?.told.find(({ id }) => id === asked) ?? null;
  if (groups === null || group === null)
    return {
      groups,
      group,
      shown: { comparison: compareDrills(tracks, POLICY), measured: tracks.length, hiddenDrills: 0 },
    };
  const own = tracks.filter(({ student }) => group.studentIds.has(student));
  // Everybody is looked at without it; each of the groups could have been asked for.
  const whole = compareDrills(own, POLICY, groups.told.length);
  const comparison = tellComparison(whole, groups.drillsTold(group));
  const hiddenDrills = whole.drills.length - comparison.drills.length;
  return { groups, group, shown: { comparison, measured: own.length, hiddenDrills } };
}

/** How the drills that were given for a fundamental compare, over everybody whom the viewer may see. */
export async function loadComparedDrills(viewer: Viewer, asked: AskedComparison): Promise<ComparedDrillsPage> {
  const { db, scope, words, today } = viewer;
  const { fundamentals, grouping } = await loadRules(viewer);
  const drilled = new Map(readDrilledFundamentals(db, scope).map((each) => [each.fundamentalId, each.students]));
  const offered = fundamentals.filter(({ id }) => drilled.has(id));
  const most = offered.toSorted((a, b) => (drilled.get(b.id) ?? 0) - (drilled.get(a.id) ?? 0))[0] ?? null;
  const wished = asked.for === undefined ? most : fundamentals.find(({ id }) => id === asked.for);
  if (wished === undefined) notFound();
  if (wished === null) return buildComparedDrills(words, { fundamental: null });
  const analyses = readComparedAnalyses(db, scope, { fundamentalId: wished.id, policyVersion: POLICY.version });
  const clubGroups = currentGroups(grouping).map(({ id }) => id);
  const clubGroup = chooseGroup(clubGroups, analyses, asked.club);
  const fields = comparedFields(viewer, wished.id);
  const tracks = analyses
    .filter((each) => each.clubGroup === clubGroup)
    .flatMap(({ studentId, body }): ComparedTrack[] => {
      const of = fields(studentId);
      return of === null ? [] : [{ ...(JSON.parse(body) as Judged).track, ...of }];
    });
  const { groups, group, shown } = compareGroup(viewer, tracks, asked.of);
  const page = buildComparedDrills(words, {
    fundamental: wished,
    clubGroup,
    offered: offered.some(({ id }) => id === wished.id) ? offered : [...offered, wished],
    grouping,
    clubGroups: clubGroups.filter((each) => analyses.some((of) => of.clubGroup === each)),
    ...{ groups, group, ...shown },
    idOf: new Map(readDrills(db, scope).map(({ id, name }) => [name, id])),
    today,
  });
  const query = { for: wished.id, club: clubGroup ?? undefined, group: group?.id };
  return linkTables(words, "compared-drills", query, page);
}
