import type { Fundamental } from "@/lib/domain/fundamental";
import { FUNDAMENTAL_WORDS } from "@/lib/domain/fundamental-word";
import { wordKey } from "./text-key";

/** What a column of a file may hold beside a fundamental's values. */
export const FIELDS = [
  "alias",
  "day",
  "sequence",
  "swing",
  "fundamental",
  "value",
  "unit",
  "club",
  "clubGroup",
  "reader",
  "circumstance",
  "aid",
  "stanceWidth",
  "cameraSd",
  "placement",
  "hand",
  "birthYear",
  "note",
  "film",
  "daysSincePractice",
  "setAside",
  "solid",
  "balls",
  "sign",
] as const;

export type Field = (typeof FIELDS)[number];

const FIELD_WORDS: Readonly<Record<Field, readonly string[]>> = {
  alias: ["student", "alias", "name", "student name", "student alias", "first name", "pupil", "player", "golfer"],
  day: ["date", "day", "session date", "session day", "film date", "filmed", "filmed on"],
  sequence: ["session no", "session nr", "session number", "session of the day"],
  swing: ["swing", "swing no", "swing nr", "swing number", "no", "nr", "#", "number"],
  fundamental: ["fundamental", "measure", "measurement", "item"],
  value: ["value", "reading", "result", "measured"],
  unit: ["unit", "units"],
  club: ["club", "club used"],
  clubGroup: ["club group", "clubs", "group of clubs", "clubgroup"],
  reader: ["reader", "read by", "measured by"],
  circumstance: ["circumstance", "circumstances", "filmed how"],
  aid: ["aid", "aid used", "training aid", "which aid"],
  stanceWidth: ["stance width", "stance"],
  cameraSd: ["camera sd", "capture sd", "camera error sd"],
  placement: ["placement", "phone placement", "camera placement", "phone place", "camera place", "placement label"],
  hand: ["hand", "handedness", "plays", "plays from"],
  birthYear: ["birth year", "birthyear", "year of birth", "born"],
  note: ["note", "notes", "remark", "remarks", "comment", "comments"],
  film: ["film", "film reference", "film ref", "video", "clip"],
  daysSincePractice: ["days since practice", "days since last practice"],
  setAside: ["set aside", "setaside", "excluded", "exclude"],
  solid: ["solid", "solid strikes"],
  balls: ["balls", "balls hit"],
  sign: ["sign", "sign rule", "plus means"],
};

const FIELD_BY_WORD: ReadonlyMap<string, Field> = new Map(
  FIELDS.flatMap((field) => FIELD_WORDS[field].map((word) => [word, field] as const)),
);

/** The field that a header's key names; null: none. */
export function fieldOf(key: string): Field | null {
  return FIELD_BY_WORD.get(key) ?? null;
}

/** Every word of a fundamental in this academy, as keys. */
export function fundamentalWords(fundamentals: readonly Fundamental[]): ReadonlyMap<string, Fundamental> {
  const words = new Map<string, Fundamental>();
  const table = new Map<string, readonly string[]>(Object.entries(FUNDAMENTAL_WORDS));
  for (const entry of fundamentals) {
    const all = [entry.id, ...(table.get(entry.id) ?? []), ...(entry.ownName === null ? [] : [entry.ownName])];
    for (const word of all) if (!words.has(wordKey(word))) words.set(wordKey(word), entry);
  }
  return words;
}

/** Words of fields, for the closest one to a misspelt header. */
export function fieldWords(): Iterable<readonly [string, Field]> {
  return FIELD_BY_WORD;
}
