import { type ClubGroup, clubKindOf } from "@/lib/domain/club-group";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Words } from "@/lib/words/catalogue";
import { sayClubGroup } from "@/lib/words/say-club";

/** With which club a family films, in its words: the one of the latest film in these clubs, else the clubs themselves. */
export function sayClubAsked(
  words: Words,
  asked: { readonly grouping: ClubGrouping; readonly clubGroup: ClubGroup; readonly club: string | null },
): string {
  const { grouping, clubGroup, club } = asked;
  if (club) return words.say("ask.with", { club });
  return clubKindOf(clubGroup) === "driver"
    ? words.say("ask.with-driver")
    : words.say("ask.with-group", { group: sayClubGroup(words, grouping, clubGroup) });
}
