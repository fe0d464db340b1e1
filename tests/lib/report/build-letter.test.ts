import { describe, expect, it } from "vitest";
import { buildLetter, chosenPieces, type LetterChoice, letterText } from "@/lib/report/build-letter";
import { tellPieces } from "@/lib/report/tell-pieces";
import { wordsFor } from "@/lib/words/catalogue";
import { madeTelling } from "./made-telling";

const words = wordsFor("en");
const telling = madeTelling();
const pieces = tellPieces(words, telling);
const all = pieces.map(({ key }) => key);
const FROM = { coach: "Bo", academy: "Far Range" };
const letter = (choice: Partial<LetterChoice> = {}) =>
  buildLetter(
    { page: words, family: words },
    { telling, pieces },
    { order: all, own: "", place: "last", ...choice },
    FROM,
  );

describe("a season letter", () => {
  it("is every sentence as it is generated, from whom and when, with what is said of pain", () => {
    const sheet = letter();
    expect(sheet.paragraphs).toEqual(pieces.map(({ text }) => text));
    expect(sheet.heading).toBe(telling.story.heading);
    expect(sheet.own).toBeNull();
    const text = letterText(sheet);
    expect(text.startsWith(`Far Range\nSat 12 Sep 2026\n\n${telling.story.heading}\n\n`)).toBe(true);
    expect(text).toContain("Does something hurt? Stop, and tell a grown-up today.");
    expect(text).toContain("For Dot and family, from Bo.");
  });

  it("leaves out and orders whole sentences; then its heading tells no finding that may be left out", () => {
    const sheet = letter({ order: ["task", "good"] });
    const text = (key: string) => pieces.find((piece) => piece.key === key)?.text;
    expect(sheet.paragraphs).toEqual([text("task"), text("good")]);
    expect(sheet.heading).toBe("Dot: how it is going");
    expect(letter({ order: ["task", "task", "nothing"] }).paragraphs).toEqual([text("task")]);
  });

  it("marks the coach's own paragraph as theirs, before or after", () => {
    const own = { own: "She listens.\n\nMore next year." };
    const sheet = letter({ ...own, place: "first" });
    expect(sheet.own).toEqual({
      ...{ heading: "In Bo’s own words", lines: ["She listens.", "More next year."], place: "first" },
    });
    const at = (place: "first" | "last") => letterText(letter({ ...own, place })).indexOf("In Bo’s own words");
    expect(at("first")).toBeLessThan(letterText(letter({ ...own, place: "first" })).indexOf(telling.story.good));
    expect(at("last")).toBeGreaterThan(letterText(letter({ ...own })).indexOf(telling.story.good));
    expect(letter({ own: " \n " }).own).toBeNull();
  });

  it("never leaves out what must stay", () => {
    const kept = { key: "changed-1", text: "We take that back.", may: "stay" } as const;
    const rest = { key: "good", text: "Good.", may: "leave" } as const;
    expect(chosenPieces([rest, kept], [])).toEqual([kept]);
    expect(chosenPieces([rest, kept], ["good", "changed-1"])).toEqual([rest, kept]);
  });
});

describe("a letter in another language than the page", () => {
  it("says its sentences in the family’s, and in the coach’s how it is printed", () => {
    const german = wordsFor("de");
    const choice = { order: [], own: "Well done.", place: "last" } as const;
    const sheet = buildLetter({ page: words, family: german }, { telling, pieces: [] }, choice, FROM);
    expect([sheet.lang, sheet.margin]).toEqual(["de", "The letter"]);
    expect(sheet.day).toBe("Sa, 12. September 2026");
    expect(sheet.own?.heading).toBe("In eigenen Worten von Bo");
    expect(letterText(sheet)).toContain("Für Dot und Familie, von Bo.");
  });
});
