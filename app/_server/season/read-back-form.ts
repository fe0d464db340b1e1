import type { Fundamental } from "@/lib/domain/fundamental";
import type { ReadBack, ReadBackItem } from "@/lib/domain/read-back";
import type { FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental, sayPlus } from "@/lib/words/say-fundamental";
import { cameBack, type FormDraft } from "../draft/form-draft";
import type { EarlierFilm } from "./read-back-desk";
import { field } from "./student-form";

interface Kept {
  readonly studentId: string;
  readonly draft: FormDraft | null;
}

/** The form that chooses films, by their days and never by their references: together they would tell the order. */
export function buildReadBackWish(
  words: Words,
  kept: Kept,
  source: {
    readonly fundamental: Fundamental;
    readonly reader: string;
    readonly films: readonly EarlierFilm[];
  },
): FormModel {
  const { fundamental, reader, films } = source;
  const one = (spec: Parameters<typeof field>[3]) => field(words, kept.draft, "read-back", spec);
  return {
    heading: words.say("read-back.choose"),
    explains: words.say("read-back.choose.explains", { name: sayFundamental(words, fundamental), reader }),
    parts: [
      {
        margin: words.say("read-back.choose"),
        explains: "",
        fields: [
          one({
            name: "films",
            kind: "checkbox",
            value: films.map((film) => film.sessionId).join(","),
            options: films.map((film) => ({
              value: film.sessionId,
              label: words.say("read-back.film", { day: sayDay(words, film.day, "full"), swings: film.swings }),
            })),
          }),
          one({ name: "each", kind: "number" }),
        ],
      },
    ],
    grid: null,
    submit: words.say("read-back.start"),
    refusal: kept.draft?.refusal ?? "",
    hidden: [
      { name: "studentId", value: kept.studentId },
      { name: "fundamental", value: fundamental.id },
      { name: "reader", value: reader },
    ],
  };
}

function valuePart(
  words: Words,
  draft: FormDraft | null,
  item: ReadBackItem,
  { fundamental, items }: { readonly fundamental: Fundamental; readonly items: number },
): FormModel["parts"][number] {
  const value = field(words, draft, "read-back", {
    name: `v.${item.place}`,
    kind: "text",
    label: words.say("reread-draw.value", { reference: item.filmReference, swing: item.swing }),
    value: item.typed ?? "",
  });
  const hint = words.say("reread-draw.hint", {
    name: sayFundamental(words, fundamental),
    unit: words.say(`unit.${fundamental.unit}.short`),
    checkpoint: words.say(`checkpoint.${fundamental.checkpoint}`),
    plus: sayPlus(words, fundamental),
  });
  return {
    margin: words.say("reread-draw.place", { place: item.place, items }),
    explains: item.typed === null ? "" : words.say("reread-draw.saved"),
    fields: [{ ...value, hint }],
  };
}

/** The form of an open read-back: which film to open next, and nothing of when it was filmed or what else was read in it. */
export function buildReadBackForm(
  words: Words,
  kept: Kept,
  source: {
    readonly readBack: ReadBack;
    readonly items: readonly ReadBackItem[];
    readonly fundamental: Fundamental;
  },
): FormModel {
  const { readBack, items, fundamental } = source;
  const box = (part: "check" | "end", name: string): FormModel["parts"][number] => ({
    margin: words.say(`read-back.part.${part}`),
    explains: words.say(`read-back.part.${part}.explains`),
    fields: [
      field(words, kept.draft, "read-back", {
        name,
        kind: "checkbox",
        options: [{ value: "yes", label: words.say(`read-back.${name}.yes`) }],
      }),
    ],
  });
  const isConfirmed = kept.draft?.entries.some(([name]) => name === "confirmUnusual") ?? false;
  const values = items.map((item) => valuePart(words, kept.draft, item, { fundamental, items: items.length }));
  return {
    heading: words.say("read-back.open", { name: sayFundamental(words, fundamental), items: items.length }),
    explains: words.say("read-back.open.explains", { reader: readBack.reader }),
    parts: [
      ...(cameBack(kept.draft) === "no" && !isConfirmed ? [] : [box("check", "confirmUnusual")]),
      ...values,
      box("end", "finish"),
    ],
    grid: null,
    submit: words.say("read-back.save"),
    refusal: kept.draft?.refusal ?? "",
    hidden: [
      { name: "studentId", value: kept.studentId },
      { name: "readBackId", value: readBack.id },
      ...items.map(({ place, typed }) => ({ name: `was.${place}`, value: typed ?? "" })),
    ],
  };
}

/** The button that gives an open read-back up. */
export function buildDropForm(words: Words, studentId: string, readBackId: string): FormModel {
  return {
    heading: words.say("read-back.drop"),
    explains: words.say("read-back.drop.explains"),
    parts: [],
    grid: null,
    submit: words.say("read-back.drop"),
    refusal: "",
    hidden: [
      { name: "studentId", value: studentId },
      { name: "readBackId", value: readBackId },
    ],
  };
}
