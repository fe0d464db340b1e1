import { describe, expect, it } from "vitest";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import { parseFactsForm } from "@/lib/ingest/parse-facts-form";
import { parseMoveForm } from "@/lib/ingest/parse-move-form";
import { parseSplitForm } from "@/lib/ingest/parse-split-form";

function form(entries: readonly (readonly [string, string])[]): FormData {
  const data = new FormData();
  for (const [name, value] of entries) data.append(name, value);
  return data;
}
const takers = [
  { id: "r", hand: "right" },
  { id: "l", hand: "left" },
] as const;
const context = { hand: "right", takers } as const;
const codes = (parsed: { readonly kind: string; readonly issues?: readonly { field: string; code: string }[] }) =>
  parsed.issues?.map(({ field, code }) => `${field} ${code}`) ?? [];

describe("a move's form", () => {
  it("keeps the signs between equal hands whatever is said, and asks between unlike ones", () => {
    const move = (...entries: (readonly [string, string])[]) =>
      parseMoveForm(form([["why", "x"], ...entries]), context);
    expect(move(["to", "r"], ["signs", "turn"])).toEqual({ kind: "ok", value: { to: "r", signs: "keep", why: "x" } });
    expect(codes(move(["to", "l"]))).toEqual(["signs hands-differ"]);
    expect(codes(move(["to", "l"], ["signs", "both"]))).toEqual(["signs hands-differ"]);
    expect(move(["to", "l"], ["signs", "turn"])).toMatchObject({ value: { signs: "turn" } });
    expect(codes(move(["to", "other"]))).toEqual(["to not-a-choice"]);
    expect(codes(parseMoveForm(form([]), context))).toEqual(["why missing", "to missing"]);
  });
});

describe("a split's form", () => {
  const split = (swings: readonly string[], more: readonly (readonly [string, string])[] = []) =>
    parseSplitForm(
      form([
        ...swings.map((number) => ["swings", number] as const),
        ...([
          ["why", "x"],
          ["to", "r"],
          ["day", "2031-02-01"],
          ["clubGroup", "iron"],
        ] as const),
        ...more,
      ]),
      { ...context, today: "2031-03-01", grouping: SHORT_LIST, birthYear: null, swings: [1, 2, 5] },
    );

  it("needs one swing that goes and one that stays", () => {
    expect(split(["5", "1"])).toMatchObject({
      kind: "ok",
      value: { swings: [1, 5], day: "2031-02-01", clubGroup: "iron" },
    });
    expect(codes(split([]))).toEqual(["swings no-swings"]);
    expect(codes(split(["1", "2", "5"]))).toEqual(["swings all-swings"]);
    expect(codes(split(["3"]))).toEqual(["swings not-a-choice", "swings no-swings"]);
  });
});

describe("a form of facts", () => {
  it("needs a reason, and says for the session and each film why it is set aside", () => {
    const data = form([
      ...([
        ["day", "2031-02-01"],
        ["clubGroup", "iron"],
        ["setAside", "rain"],
        ["aside.face-on", "blurred"],
      ] as const),
    ]);
    const facts = {
      today: "2031-03-01",
      grouping: SHORT_LIST,
      birthYear: null,
      hand: "left",
      readers: ["Coach Lark"],
    } as const;
    expect(codes(parseFactsForm(data, facts))).toEqual(["reader missing", "why missing"]);
    data.set("why", "looked again");
    data.set("reader", " coach  lark");
    expect(parseFactsForm(data, facts)).toMatchObject({
      kind: "ok",
      value: {
        reader: "Coach Lark",
        setAsideReason: "rain",
        captures: [{ setAsideReason: "blurred" }, { setAsideReason: null }],
        why: "looked again",
      },
    });
  });
});
