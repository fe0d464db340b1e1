import type { Words } from "@/lib/words/catalogue";
import type { GridWords } from "./grid-model";

/** Gaps that are filled on the page, while one types. */
const GAPS = [
  "answered",
  "begun",
  "name",
  "swing",
  "label",
  "value",
  "filled",
  "changed",
  "blank",
  "lines",
  "places",
  "roomLines",
  "roomPlaces",
  "undone",
  "kept",
] as const;

const OPEN = Object.fromEntries(GAPS.map((gap) => [gap, `{${gap}}`]));

const KEYS = ["enter", "arrows", "tab", "ends", "paste", "undo"] as const;
const LETTERS = ["n", "x", "s", "k", "r"] as const;

/** Every sentence that a grid says while one types, its gaps left open. */
export function buildGridWords(words: Words): GridWords {
  const say = (key: string): string => words.say(`grid.${key}`, OPEN);
  const key = (group: string) => (name: string) => ({
    keys: say(`${group}.${name}.keys`).split(" "),
    does: say(`${group}.${name}`),
  });
  return {
    count: say("count"),
    where: say("where"),
    nowhere: say("nowhere"),
    unusual: say("unusual"),
    right: say("right"),
    allRight: say("all-right"),
    pasted: say("pasted"),
    overflow: say("overflow"),
    overflowRest: say("overflow.rest"),
    pastedBlank: say("pasted.blank"),
    undone: say("undone"),
    undo: say("undo"),
    restStays: say("rest.stays"),
    moreSwing: say("more-swing"),
    noMoreSwing: say("no-more-swing"),
    arrangement: say("arrangement"),
    arrange: { swings: say("arrange.swings"), columns: say("arrange.columns") },
    turn: say("turn"),
    letters: say("letters"),
    plusHead: say("plus-head"),
    fundamentalHead: say("fundamental-head"),
    keysHeading: say("keys"),
    keys: KEYS.map(key("key")),
    letterKeys: LETTERS.map(key("letter")),
  };
}
