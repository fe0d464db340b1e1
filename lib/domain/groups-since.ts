import type { ClubGroup } from "./club-group";
import { type ClubGrouping, groupNow, groupOfClub } from "./club-grouping";

/** What became of a club group: where its own goes now, and every group in use that holds a club of it. */
export interface GroupsSince {
  readonly now: ClubGroup;
  readonly holding: readonly ClubGroup[];
}

/**
 * What a group of clubs is now that somebody named on an earlier day. One in use is itself; of one that was split or merged
 * since, `now` is where its sessions without a club went, and `holding` are all groups with clubs of it, `now` among them.
 *
 * @returns null: the academy never had it
 */
export function groupsSince(grouping: ClubGrouping, told: ClubGroup): GroupsSince | null {
  const group = grouping.find(({ id }) => id === told);
  if (group === undefined) return null;
  if (group.state === "current") return { now: told, holding: [told] };
  const now = groupNow(grouping, told, null);
  return { now, holding: [...new Set([now, ...group.clubs.map((club) => groupOfClub(grouping, club))])] };
}
