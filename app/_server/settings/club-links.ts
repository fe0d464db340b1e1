import type { ClubGroup } from "@/lib/domain/club-group";
import { type ClubGrouping, currentGroups } from "@/lib/domain/club-grouping";
import type { Link } from "@/lib/report/page-model";
import type { Words } from "@/lib/words/catalogue";
import { sayGroupOfClubs } from "@/lib/words/say-club";

interface Grouped {
  readonly history: { readonly clubGroup: ClubGroup; readonly sessions: readonly unknown[] };
}

/** The club group to show: the wished one where there is a track of it, else the one with most sessions. */
export function chooseClubGroup(
  grouping: ClubGrouping,
  tracks: readonly Grouped[],
  wished: string | undefined,
): ClubGroup | null {
  let best: ClubGroup | null = null;
  let most = 0;
  for (const { id } of currentGroups(grouping)) {
    const own = tracks.filter((track) => track.history.clubGroup === id);
    if (id === wished && own.length > 0) return id;
    const sessions = Math.max(0, ...own.map((track) => track.history.sessions.length));
    if (sessions > most) [best, most] = [id, sessions];
  }
  return best;
}

/** A link to the page of each club group that has a track, the one shown marked. */
export function clubLinks(
  words: Words,
  grouping: ClubGrouping,
  tracks: readonly Grouped[],
  shown: { readonly clubGroup: ClubGroup | null; readonly path: string },
): readonly (Link & { readonly current: "yes" | "no" })[] {
  return currentGroups(grouping)
    .filter(({ id }) => tracks.some((track) => track.history.clubGroup === id))
    .map((group) => ({
      href: `${shown.path}?club=${group.id}`,
      label: sayGroupOfClubs(words, group),
      current: group.id === shown.clubGroup ? "yes" : "no",
    }));
}
