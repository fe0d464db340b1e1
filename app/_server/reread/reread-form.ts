import type { Fundamental } from "@/lib/domain/fundamental";
import { REREAD_LEVELS, type RereadDraw, type RereadItem } from "@/lib/domain/reread";
import { FEWEST } from "@/lib/ingest/parse-reread-form";
import type { FormModel } from "@/lib/report/form-model";
import { READER_ERROR_THRESHOLDS } from "@/lib/verdict/reader-error-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayFundamental, sayPlus } from "@/lib/words/say-fundamental";
import { cameBack, type FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";

/** The form that asks for a draw. */
export function buildWishForm(
  words: Words,
  draft: FormDraft | null,
  source: {
    readonly fundamentals: readonly Fundamental[];
    readonly readers: readonly string[];
    readonly viewer: string;
    /** Readings on file, and those whose film can't be opened again. */
    readonly reach: { readonly readings: number; readonly noReference: number };
  },
): FormModel {
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, "reread-form", spec);
  const fewest = { value: FEWEST, label: words.say("reread-form.fundamental.fewest") };
  const fundamentals = source.fundamentals
    .filter((fundamental) => fundamental.derivedFrom === null)
    .map((fundamental) => ({ value: fundamental.id, label: sayFundamental(words, fundamental) }));
  const usual = READER_ERROR_THRESHOLDS.drawn.value;
  return {
    heading: words.say("reread-form.heading"),
    explains: words.say("reread-form.explains"),
    parts: [
      {
        margin: words.say("reread-form.part.what"),
        explains: words.say("reread-form.reach", source.reach),
        fields: [
          one({ name: "fundamental", kind: "select", options: [fewest, ...fundamentals], value: FEWEST }),
          { ...one({ name: "count", kind: "number", hint: "" }), hint: words.say("reread-form.count.hint", { usual }) },
        ],
      },
      {
        margin: words.say("reread-form.part.who"),
        explains: words.say("reread-form.part.who.explains"),
        fields: [
          one({
            name: "level",
            kind: "radio",
            required: "yes",
            value: "b",
            options: REREAD_LEVELS.map((level) => ({
              value: level,
              label: words.say(`reread-form.level.${level}`),
            })).reverse(),
          }),
          one({
            name: "reader",
            kind: "select",
            required: "yes",
            value: source.readers.includes(source.viewer) ? source.viewer : (source.readers[0] ?? ""),
            options: source.readers.map((reader) => ({ value: reader, label: reader })),
          }),
        ],
      },
    ],
    grid: null,
    submit: words.say("reread-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [],
  };
}

function valuePart(
  words: Words,
  draft: FormDraft | null,
  draw: RereadDraw,
  item: RereadItem,
  fundamental: Fundamental,
): FormModel["parts"][number] {
  return {
    margin: words.say("reread-draw.place", { place: item.place, items: draw.items }),
    explains: item.typed === null ? "" : words.say("reread-draw.saved"),
    fields: [
      {
        ...field(words, draft, "reread-draw", {
          name: `v.${item.place}`,
          kind: "text",
          label: words.say("reread-draw.value", { reference: item.filmReference, swing: item.swing }),
          value: item.typed ?? "",
        }),
        hint: words.say("reread-draw.hint", {
          name: sayFundamental(words, fundamental),
          unit: words.say(`unit.${fundamental.unit}.short`),
          checkpoint: words.say(`checkpoint.${fundamental.checkpoint}`),
          plus: sayPlus(words, fundamental),
        }),
      },
    ],
  };
}

/** The form of an open draw, one still below the other: which film to open, and nothing of what was read in it. */
export function buildDrawForm(
  words: Words,
  draft: FormDraft | null,
  source: {
    readonly draw: RereadDraw;
    readonly items: readonly RereadItem[];
    readonly fundamentals: readonly Fundamental[];
  },
): FormModel {
  const { draw, items, fundamentals } = source;
  const box = (part: "check" | "end", name: string): FormModel["parts"][number] => ({
    margin: words.say(`reread-draw.part.${part}`),
    explains: words.say(`reread-draw.part.${part}.explains`),
    fields: [
      field(words, draft, "reread-draw", {
        name,
        kind: "checkbox",
        options: [{ value: "yes", label: words.say(`reread-draw.${name}.yes`) }],
      }),
    ],
  });
  const isConfirmed = draft?.entries.some(([name]) => name === "confirmUnusual") ?? false;
  const values = items.flatMap((item) => {
    const fundamental = fundamentals.find((each) => each.id === item.fundamentalId);
    return fundamental ? [valuePart(words, draft, draw, item, fundamental)] : [];
  });
  return {
    heading: words.say("reread-draw.heading", { items: draw.items }),
    explains: words.say(`reread-draw.explains.${draw.level}`, { reader: draw.reader }),
    parts: [
      ...(cameBack(draft) === "no" && !isConfirmed ? [] : [box("check", "confirmUnusual")]),
      ...values,
      box("end", "finish"),
    ],
    grid: null,
    submit: words.say("reread-draw.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [{ name: "drawId", value: draw.id }],
  };
}

/** The form that gives the readings of a draw to a second reader. */
export function buildSecondForm(words: Words, draft: FormDraft | null, drawId: string): FormModel {
  return {
    heading: words.say("reread-second.heading"),
    explains: words.say("reread-second.explains"),
    parts: [
      {
        margin: words.say("reread-second.part"),
        explains: "",
        fields: [field(words, draft, "reread-second", { name: "reader", kind: "text", required: "yes" })],
      },
    ],
    grid: null,
    submit: words.say("reread-second.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [{ name: "drawId", value: drawId }],
  };
}
