import type { ClubGroup } from "./club-group";

/** Words for a whole group of clubs, lower case, blanks for hyphens. */
const GROUP_WORDS: Readonly<Record<string, ClubGroup>> = {
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
  driver: "driver",
  "1 wood": "driver",
};

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

/**
 * The club group that a club's name falls into.
 *
 * Wedges and the 9-iron are short irons, the 8-iron and longer are irons; a bare number with `i`, `h` or `w` behind it
 * is an iron, hybrid or wood; `P`, `G`, `S`, `A` and `L` with a `W` are wedges, as is a loft of 44 to 64 degrees. Common
 * practice, no source.
 *
 * @param text a club or a group of clubs as somebody wrote it, any case
 * @returns null when the text names no club known here; nothing is guessed from part of a word
 */
export function clubGroupOf(text: string): ClubGroup | null {
  const plain = text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[\s_\-–.]+/g, " ")
    .trim()
    .replace(/^[a-z]+(?= (?:iron|hybrid|wood)$)/, (word) => NUMBER_WORDS[word] ?? word);
  if (Object.hasOwn(GROUP_WORDS, plain)) return GROUP_WORDS[plain] ?? null;
  const iron = /^(?:([1-9]) ?(?:i|iron)|iron ([1-9]))$/.exec(plain);
  if (iron) return (iron[1] ?? iron[2]) === "9" ? "short-iron" : "iron";
  if (/^(?:[2-9] ?(?:h|hy|hybrid|rescue)|hybrid [2-9])$/.test(plain)) return "hybrid";
  if (/^(?:[2-9] ?(?:w|wood|fairway wood)|wood [2-9])$/.test(plain)) return "wood";
  if (/^(?:1 ?w|dr|drive)$/.test(plain)) return "driver";
  if (/^(?:[pgsal]w|(?:pitching|gap|sand|approach|lob) (?:wedge|iron))$/.test(plain)) return "short-iron";
  const loft = /^(\d{2}) ?(?:°|deg|degree|degrees)?(?: wedge)?$/.exec(plain);
  return loft && Number(loft[1]) >= 44 && Number(loft[1]) <= 64 ? "short-iron" : null;
}
