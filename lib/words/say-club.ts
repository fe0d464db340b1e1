import { type Club, kindOfClub } from "@/lib/domain/club";
import { type ClubGroup, clubKindOf } from "@/lib/domain/club-group";
import type { ClubGrouping, GroupOfClubs } from "@/lib/domain/club-grouping";
import type { Words } from "./catalogue";

/** The name of a club group: the academy's own, or its kind's. */
export function sayGroupOfClubs(words: Words, group: GroupOfClubs): string {
  return group.name ?? words.say(`club.${clubKindOf(group.id)}`);
}

/** The name of a club group by its id; of one that the academy never had, its kind's. */
export function sayClubGroup(words: Words, grouping: ClubGrouping, id: ClubGroup): string {
  const group = grouping.find((each) => each.id === id);
  return group ? sayGroupOfClubs(words, group) : words.say(`club.${clubKindOf(id)}`);
}

/** One club: “7-iron”, “sand wedge”, “driver”. */
export function sayClub(words: Words, club: Club): string {
  const number = /^\d/.exec(club)?.[0];
  return number === undefined
    ? words.say(`one-club.${club}`)
    : words.say(`one-club.${kindOfClub(club) === "short-iron" ? "iron" : kindOfClub(club)}`, { number });
}

/** Clubs in a row, as they can be typed. */
export function sayClubs(words: Words, clubs: readonly Club[]): string {
  return clubs.map((club) => sayClub(words, club)).join(", ");
}
