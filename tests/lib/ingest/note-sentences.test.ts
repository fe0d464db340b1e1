import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { noteSentences } from "@/lib/ingest/note-sentences";

const sentences = (note: string) => noteSentences(note).map(([from, to]) => note.slice(from, to).trim());

describe("the sentences of a note", () => {
  it("end at a point before a space or with the line; 2.5 is no end", () =>
    expect(sentences("3 thin. Wind 2.5!\ntwo fat\n\n")).toEqual(["3 thin.", "Wind 2.5!", "two fat"]));

  it("hold every letter of it once, in order", () =>
    fc.assert(
      fc.property(fc.string(), (note) => {
        const squeezed = (text: string) => text.replace(/\s/g, "");
        expect(squeezed(sentences(note).join(""))).toBe(squeezed(note));
      }),
    ));
});
