import { describe, expect, it } from "vitest";
import type { PhraseCoding } from "@/lib/domain/phrase-coding";
import { buildNoteCodings } from "@/lib/report/build-note-codings";
import { wordsFor } from "@/lib/words/catalogue";

const row = (phrase: string, coding: PhraseCoding, day: string) => ({
  phrase,
  coding,
  who: "Coach Lark",
  recordedAt: `${day}T10:00:00.000Z`,
});

describe("the page of corrected phrases", () => {
  it("lists what is in force with who and when, each to be undone, and all that was ever said, latest first", () => {
    const page = buildNoteCodings(wordsFor("en"), [
      row("heavy", { as: "mention" }, "2026-03-01"),
      row("# lateral", { as: "strike", kind: "toe" }, "2026-03-02"),
      row("heavy", { as: "as-read" }, "2026-03-03"),
    ]);
    expect(page.table.rows.map((each) => each.cells)).toEqual([
      ["# lateral", "a strike: toe", "Coach Lark", "Mon 2 Mar 2026"],
    ]);
    expect(page.takeBacks).toEqual([{ phrase: "# lateral", label: "Undo “# lateral”" }]);
    expect(page.history?.table.rows.map((each) => each.cells[1])).toEqual([
      "undone: as the rules read it",
      "a strike: toe",
      "named, never counted",
    ]);
    expect(page.none).toBe("");
  });

  it("a count is said with its words: of one note, or of a number word in every note; taken back by its key", () => {
    const page = buildNoteCodings(wordsFor("en"), [
      row("@s%201 2 thin x3", { as: "count", count: 2, of: "none" }, "2026-03-01"),
      row("~couple thin", { as: "count", count: 3, of: "as-read" }, "2026-03-02"),
    ]);
    expect(page.table.rows.map((each) => each.cells.slice(0, 2))).toEqual([
      ["thin x3 (in one note)", "2 counted, and not of so many"],
      ["couple thin", "3 counted"],
    ]);
    expect(page.takeBacks.map((each) => each.phrase)).toEqual(["@s%201 2 thin x3", "~couple thin"]);
  });

  it("without a correction says so, and has no history", () => {
    const page = buildNoteCodings(wordsFor("en"), []);
    expect(page.none).not.toBe("");
    expect(page.history).toBeNull();
  });
});
