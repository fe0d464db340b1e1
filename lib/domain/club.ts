import type { ClubKind } from "./club-group";

const KIND_BY_CLUB = {
  lw: "short-iron",
  sw: "short-iron",
  gw: "short-iron",
  pw: "short-iron",
  "9i": "short-iron",
  "8i": "iron",
  "7i": "iron",
  "6i": "iron",
  "5i": "iron",
  "4i": "iron",
  "3i": "iron",
  "2i": "iron",
  "1i": "iron",
  "9h": "hybrid",
  "8h": "hybrid",
  "7h": "hybrid",
  "6h": "hybrid",
  "5h": "hybrid",
  "4h": "hybrid",
  "3h": "hybrid",
  "2h": "hybrid",
  "9w": "wood",
  "8w": "wood",
  "7w": "wood",
  "6w": "wood",
  "5w": "wood",
  "4w": "wood",
  "3w": "wood",
  "2w": "wood",
  driver: "driver",
} as const satisfies Readonly<Record<string, ClubKind>>;

/** One club: lob, sand, gap and pitching wedge, then number and kind (`7i`, `4h`, `3w`), and the driver. */
export type Club = keyof typeof KIND_BY_CLUB;

/** Every club, within a kind the shortest first. */
export const CLUBS = Object.keys(KIND_BY_CLUB) as readonly Club[];

/** Whether a text is a club's id. */
export function isClub(text: string): text is Club {
  return Object.hasOwn(KIND_BY_CLUB, text);
}

/** The kind of a club. */
export function kindOfClub(club: Club): ClubKind {
  return KIND_BY_CLUB[club];
}

/** The clubs of a kind, shortest first. */
export function clubsOfKind(kind: ClubKind): readonly Club[] {
  return CLUBS.filter((club) => kindOfClub(club) === kind);
}
