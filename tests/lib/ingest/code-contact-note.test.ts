import { describe, expect, it } from "vitest";
import { codeContactNote } from "@/lib/ingest/code-contact-note";
import { DEVELOPED, HELD_BACK, type TaggedNote } from "./contact-notes";
import { FRESH_DEVELOPED, FRESH_HELD_BACK } from "./contact-notes-fresh";

const said = (note: string, balls: number | null): string =>
  codeContactNote(note, balls)
    .contacts.map(({ kind, count, of }) => `${kind}=${count === null ? "~" : of === null ? count : `${count}/${of}`}`)
    .join(" ");
const wrong = (notes: readonly TaggedNote[]) =>
  notes.flatMap(([note, balls, says]) => (said(note, balls) === says ? [] : [{ note, got: said(note, balls), says }]));

describe("what notes say of strikes (162 invented notes; words of the trade: common practice, no source)", () => {
  it.each(DEVELOPED)("%j, %s balls: %s", (note, balls, says) => expect(said(note, balls)).toBe(says));

  it("of the 80 notes kept apart at least 72 are coded wholly right", () => {
    const missed = wrong(HELD_BACK);
    expect(HELD_BACK.length).toBe(80);
    expect(missed.length, JSON.stringify(missed)).toBeLessThanOrEqual(8);
  });

  it.each(FRESH_DEVELOPED)("%j, %s balls: %s", (note, balls, says) => expect(said(note, balls)).toBe(says));

  // On their first run, before any rule was mended, 29 of these 39 were right and 5 of the 14 for development.
  it("of the 39 hard notes kept apart at least 29 are coded wholly right", () => {
    expect(FRESH_HELD_BACK.length).toBe(39);
    expect(wrong(FRESH_HELD_BACK).length).toBeLessThanOrEqual(10);
  });

  it("the accuracy on each part of the table is printed", () => {
    const parts = { DEVELOPED, HELD_BACK, FRESH_DEVELOPED, FRESH_HELD_BACK };
    const lines = Object.entries(parts).map(
      ([name, notes]) => `${name}: ${notes.length - wrong(notes).length} of ${notes.length} notes coded wholly right`,
    );
    console.info(lines.join("\n"));
    expect(lines).toHaveLength(4);
  });

  it("no note stands in two parts", () => {
    const all = [...DEVELOPED, ...HELD_BACK, ...FRESH_DEVELOPED, ...FRESH_HELD_BACK].map(
      ([note, balls]) => `${note} ${balls}`,
    );
    expect(all.filter((note, at) => all.indexOf(note) !== at)).toEqual([]);
  });
});

describe("what is never done", () => {
  it("no denominator is made up: of what, only where the note or the count of balls says so", () => {
    for (const [note] of [...DEVELOPED, ...HELD_BACK])
      for (const { of } of codeContactNote(note, null).contacts) if (of !== null) expect(note).toContain(String(of));
  });

  it("more counted than hit is asked about", () => {
    expect(codeContactNote("5 fat", 3).tooMany).toBe("yes");
    expect(codeContactNote("3 fat", 3).tooMany).toBe("no");
    expect(codeContactNote("5 fat", null).tooMany).toBe("no");
  });

  it("each phrase says where it stands in the note", () => {
    const note = "Cold day, 2 Thin";
    const { contacts } = codeContactNote(note, null);
    expect(contacts.map(({ at }) => note.slice(at[0], at[1]))).toEqual(["Thin"]);
  });

  it("what is passed over says why, with the phrase in compared form", () => {
    const note = "Pulled 2; stood at the top. Yesterday thin. Heavy rough";
    expect(
      codeContactNote(note, null).passed.map(({ why, at, phrase }) => [why, note.slice(at[0], at[1]), phrase]),
    ).toEqual([
      ["direction", "Pulled", "pulled #"],
      ["trap", "top", "stood at top"],
      ["history", "thin", "yesterday thin"],
      ["no-ball", "Heavy", "heavy rough"],
    ]);
  });

  it("numbers and small words don't part phrases, a negation does", () => {
    const phrases = (note: string) => codeContactNote(note, null).contacts.map((each) => each.phrase);
    expect(phrases("3 thin; two of them thin; a couple thin")).toEqual(["# thin", "# thin", "# thin"]);
    expect(phrases("no thin; some thin")).toEqual(["no thin", "thin"]);
  });

  it("any text is coded without an error, and words said twice are coded twice", () => {
    for (const text of [
      "",
      "   ",
      "x".repeat(5000),
      "2/0 fat",
      "\u0000thin",
      "🏌️ thin",
      "999999 thin",
      "no no no no thin",
    ])
      expect(Array.isArray(codeContactNote(text, null).contacts)).toBe(true);
    expect(codeContactNote("fat, fat", null).contacts).toHaveLength(2);
  });
});

it("a number of its own begins anew after a negated strike", () => {
  const counts = (note: string) => codeContactNote(note, null).contacts.map(({ kind, count }) => [kind, count]);
  expect(counts("no shanks 3 thin")).toEqual([
    ["heel", 0],
    ["low", 3],
  ]);
  expect(counts("wasn't fat 2 thin")).toEqual([
    ["ground", 0],
    ["low", 2],
  ]);
  expect(counts("no thin or fat")).toEqual([
    ["low", 0],
    ["ground", 0],
  ]);
});
