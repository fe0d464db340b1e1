/** What a strike was like: good, or where club and ball missed each other. */
export const CONTACT_KINDS = ["good", "low", "ground", "heel", "toe", "high"] as const;

/** What a strike was like. */
export type ContactKind = (typeof CONTACT_KINDS)[number];

/**
 * Words by which a strike is named, longest first where one holds another; trade words, common practice, no source.
 *
 * `plain` can hardly mean anything else; `loose` means a strike only beside a word for ball or shot, or in a bare list.
 */
export const CONTACT_WORDS: Readonly<
  Record<ContactKind, { readonly plain: readonly string[]; readonly loose: readonly string[] }>
> = {
  good: {
    plain: ["flushed", "flush", "pured", "pure", "nutted", "middled", "middle of the face", "sweet spot", "compressed"],
    loose: ["crisp", "solid", "solidly", "clean", "cleanly", "good"],
  },
  low: {
    plain: [
      "cold top",
      "caught it low",
      "topped",
      "topping",
      "tops",
      "skulled",
      "skull",
      "skulls",
      "bladed",
      "thinned",
      "thins",
    ],
    loose: ["thin", "skinny", "top", "low on the face", "blade"],
  },
  ground: {
    plain: [
      "laid the sod over it",
      "laid the sod",
      "drop-kicked",
      "drop-kick",
      "drop kick",
      "drop-kicks",
      "chunked",
      "chunks",
      "chunk",
      "chunky",
      "duffed",
      "duffs",
      "duff",
      "fatted",
    ],
    loose: ["fat", "fats", "heavy", "behind it", "ground first"],
  },
  heel: {
    plain: [
      "off the heel",
      "off the hosel",
      "heely",
      "heeled",
      "hosel",
      "shanked",
      "shanks",
      "shank",
      "socket",
      "socketed",
      "lateral",
    ],
    loose: ["heel", "heels"],
  },
  toe: { plain: ["off the toe", "toey", "toed"], loose: ["toe", "toes"] },
  high: {
    plain: [
      "ballooned off the top edge",
      "off the top edge",
      "popped up",
      "pop-ups",
      "pop-up",
      "pop up",
      "skied",
      "sky ball",
      "sky balls",
    ],
    loose: ["sky", "high on the face"],
  },
};

/** Words for where a ball flew; they say nothing of the strike. */
export const DIRECTION_WORDS: readonly string[] = ["pull", "push", "hook", "slice", "draw", "fade", "block"].flatMap(
  (word) => [word, `${word}s`, word.endsWith("e") ? `${word}d` : `${word}ed`],
);
