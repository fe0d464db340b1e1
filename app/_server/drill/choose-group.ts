import type { ClubGroup } from "@/lib/domain/club-group";

/** The group of clubs that is shown: the wished one where anything of it is measured, else the one with most students. */
export function chooseGroup(
  groups: readonly ClubGroup[],
  tracks: readonly { readonly clubGroup: string }[],
  wished: string | undefined,
): ClubGroup | null {
  const count = (group: string): number => tracks.filter(({ clubGroup }) => clubGroup === group).length;
  const had = groups.filter((group) => count(group) > 0);
  return had.find((group) => group === wished) ?? had.toSorted((a, b) => count(b) - count(a))[0] ?? null;
}
