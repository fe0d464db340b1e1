import { describe, expect, it } from "vitest";
import { codingsInForce, type PhraseCoding, parsePhraseCoding } from "@/lib/domain/phrase-coding";

const row = (phrase: string, coding: PhraseCoding, hour: number) => ({
  phrase,
  coding,
  who: "Coach",
  recordedAt: `2031-02-01T0${hour}:00:00.000Z`,
});

describe("what an academy said of phrases", () => {
  it("the latest of a phrase holds, one taken back doesn't", () => {
    const rows = [
      row("# thin", { as: "nothing" }, 1),
      row("heavy", { as: "mention" }, 2),
      row("# thin", { as: "strike", kind: "toe" }, 3),
      row("heavy", { as: "as-read" }, 4),
    ];
    expect(codingsInForce(rows)).toEqual([rows[2]]);
    expect(codingsInForce(rows.slice(0, 2))).toEqual(rows.slice(0, 2));
  });

  it("a whole coding is read, anything else is none", () => {
    expect(parsePhraseCoding('{"as":"strike","kind":"toe"}')).toEqual({ as: "strike", kind: "toe" });
    for (const text of ["", "{", "null", '{"as":"strike"}', '{"as":"strike","kind":"pull"}', '{"as":"gone"}'])
      expect(parsePhraseCoding(text)).toBeNull();
  });
});
