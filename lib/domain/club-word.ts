import { type Club, isClub, kindOfClub } from "./club";
import type { ClubKind } from "./club-group";

/** What a word for clubs means: a kind, and the one club where it names one. */
export interface ClubWord {
  readonly kind: ClubKind;
  /** Null: the word names a kind, or a club of it that nothing tells from the others. */
  readonly club: Club | null;
}

/** Words for a whole kind of clubs, lower case, blanks for hyphens. */
const KIND_WORDS: Readonly<Record<string, ClubKind>> = {
  "short iron": "short-iron",
  "short irons": "short-iron",
  wedge: "short-iron",
  wedges: "short-iron",
  iron: "iron",
  irons: "iron",
  hybrid: "hybrid",
  hybrids: "hybrid",
  rescue: "hybrid",
  wood: "wood",
  woods: "wood",
  "fairway wood": "wood",
  "fairway woods": "wood",
};

/** First letter of a wedge's name; an approach wedge stands where a gap wedge does. */
const WEDGES: Readonly<Record<string, Club>> = { p: "pw", g: "gw", a: "gw", s: "sw", l: "lw" };

/** Lofts of wedges: the first whose upper end isn't passed. */
const WEDGE_LOFTS = [
  [48, "pw"],
  [53, "gw"],
  [57, "sw"],
  [64, "lw"],
] as const satisfies readonly (readonly [number, Club])[];

const NUMBER_WORDS: Readonly<Record<string, string>> = {
  one: "1",
  two: "2",
  three: "3",
  four: "4",
  five: "5",
  six: "6",
  seven: "7",
  eight: "8",
  nine: "9",
};

function wedgeOfLoft(degrees: number): Club | null {
  if (degrees < 44) return null;
  return WEDGE_LOFTS.find(([most]) => degrees <= most)?.[1] ?? null;
}

function clubOf(plain: string): Club | null {
  const numbered =
    /^(?:([1-9]) ?(i|h|w)|([1-9]) ?(iron|hy|hybrid|rescue|wood|fairway wood)|(iron|hybrid|wood) ([1-9]))$/.exec(plain);
  if (numbered) {
    const [, short, letter, number, word, before, after] = numbered;
    const kind = (letter ?? word ?? before ?? "").replace("rescue", "h").replace("fairway wood", "w").charAt(0);
    const id = `${short ?? number ?? after}${kind}`;
    return id === "1w" ? "driver" : isClub(id) ? id : null;
  }
  if (/^(?:dr|drive|driver)$/.test(plain)) return "driver";
  const wedge = /^(?:([pgsal])w|(p|g|s|a|l)(?:itching|ap|and|pproach|ob) (?:wedge|iron))$/.exec(plain);
  if (wedge) return WEDGES[wedge[1] ?? wedge[2] ?? ""] ?? null;
  const loft = /^(\d{2}) ?(?:°|deg|degree|degrees)?(?: wedge)?$/.exec(plain);
  return loft ? wedgeOfLoft(Number(loft[1])) : null;
}

/**
 * What a word for clubs means.
 *
 * Wedges and the 9-iron are short irons, the 8-iron and longer are irons; a bare number with `i`, `h` or `w` behind it
 * is an iron, hybrid or wood; `P`, `G`, `S`, `A` and `L` with a `W` are wedges, as is a loft of 44 to 64 degrees: to 48 a
 * pitching, to 53 a gap, to 57 a sand, beyond it a lob wedge. Common practice, no source.
 *
 * @param text a club or a kind of clubs as somebody wrote it, any case
 * @returns null when the text names no club known here; nothing is guessed from part of a word
 */
export function readClubWord(text: string): ClubWord | null {
  const plain = text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[\s_\-–.]+/g, " ")
    .trim()
    .replace(/^[a-z]+(?= (?:iron|hybrid|wood)$)/, (word) => NUMBER_WORDS[word] ?? word);
  const kind = Object.hasOwn(KIND_WORDS, plain) ? KIND_WORDS[plain] : undefined;
  if (kind !== undefined) return { kind, club: null };
  const club = clubOf(plain);
  return club === null ? null : { kind: kindOfClub(club), club };
}

/** The kind of clubs that a word names; null: none known here. */
export function clubKindOfWord(text: string): ClubKind | null {
  return readClubWord(text)?.kind ?? null;
}
