import { readComparedAssignments } from "@/db/read/compared";
import { buildSpread } from "@/lib/report/build-spread";
import { byStudent } from "@/lib/report/by-student";
import type { SpreadPage } from "@/lib/report/spread-model";
import { tracksOf } from "@/lib/report/spread-source";
import type { TrackSummary } from "@/lib/report/track-summary";
import { sayClubGroup } from "@/lib/words/say-club";
import { linkTables } from "../archive/table-links";
import { loadComparedDrills } from "../drill/load-compared";
import type { Viewer } from "../gate";
import { loadWhole } from "../roster/load-whole";
import { countedFrom, groupsOf } from "./groups-of";

export { spreadTitle } from "@/lib/report/build-spread";

/** The clubs with which each student has a level. */
function measuredClubs(tracks: readonly TrackSummary[]): ReadonlyMap<string, ReadonlySet<string>> {
  const measured = byStudent(tracks.filter(({ verdict }) => verdict.levelNow !== null));
  return new Map([...measured].map(([id, own]) => [id, new Set(own.map(({ clubGroup }) => clubGroup))]));
}

/** One fundamental across the academy, of everybody or of the group that is asked for where that may be told; null: there is none of that name. */
export async function loadSpread(
  viewer: Viewer,
  fundamentalId: string,
  asked: { readonly of?: string | undefined },
): Promise<SpreadPage | null> {
  const { db, scope, words, today } = viewer;
  const whole = await loadWhole(viewer, {});
  const { entries, all, fundamentals, grouping } = whole.everyone;
  const fundamental = fundamentals.find(({ id }) => id === fundamentalId);
  if (fundamental === undefined) return null;
  const tracks = all.filter((track) => track.fundamentalId === fundamental.id);
  const clubs = measuredClubs(tracks);
  const groups = groupsOf(viewer, whole, (studentId) => clubs.get(studentId));
  const group = groups?.told.find(({ id }) => id === asked.of) ?? null;
  const given = byStudent(readComparedAssignments(db, scope, fundamental.id));
  const page = buildSpread(words, {
    ...{ fundamental, today, groups, group, here: entries.length, from: countedFrom(viewer, whole) },
    tracks: tracksOf(tracks, group),
    sayClubs: (id) => sayClubGroup(words, grouping, id as TrackSummary["clubGroup"]),
    compared: await loadComparedDrills(viewer, { for: fundamental.id, club: group?.club ?? undefined }),
    givenTo: (studentId) => given.get(studentId) ?? [],
  });
  return linkTables(words, "spread", { fundamental: fundamental.id, group: group?.id }, page);
}
