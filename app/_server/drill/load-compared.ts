import { notFound } from "next/navigation";
import { readComparedAnalyses, readDrilledFundamentals } from "@/db/read/compared";
import { readDrills } from "@/db/read/drills";
import { currentGroups } from "@/lib/domain/club-grouping";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import { compareDrills } from "@/lib/drills/compare-drills";
import { buildComparedDrills } from "@/lib/report/build-compared-drills";
import type { ComparedDrillsPage } from "@/lib/report/compared-drills-model";
import { POLICY } from "@/lib/verdict/policy";
import { linkTables } from "../archive/table-links";
import type { Viewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import type { Judged } from "../worker/tasks";
import { chooseGroup } from "./choose-group";
import { comparedFields } from "./compared-fields";

export { comparedDrillsTitle } from "@/lib/report/build-compared-drills";

/** What the comparison is asked for. */
export interface AskedComparison {
  readonly for?: string | undefined;
  readonly club?: string | undefined;
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
  const groups = currentGroups(grouping).map(({ id }) => id);
  const clubGroup = chooseGroup(groups, analyses, asked.club);
  const fields = comparedFields(viewer, wished.id);
  const tracks = analyses
    .filter((each) => each.clubGroup === clubGroup)
    .flatMap(({ studentId, body }): ComparedTrack[] => {
      const of = fields(studentId);
      return of === null ? [] : [{ ...(JSON.parse(body) as Judged).track, ...of }];
    });
  const page = buildComparedDrills(words, {
    fundamental: wished,
    clubGroup,
    offered: offered.some(({ id }) => id === wished.id) ? offered : [...offered, wished],
    grouping,
    groups: groups.filter((group) => analyses.some((each) => each.clubGroup === group)),
    comparison: compareDrills(tracks, POLICY),
    measured: tracks.length,
    idOf: new Map(readDrills(db, scope).map(({ id, name }) => [name, id])),
    today,
  });
  return linkTables(words, "compared-drills", { for: wished.id, club: clubGroup ?? undefined }, page);
}
