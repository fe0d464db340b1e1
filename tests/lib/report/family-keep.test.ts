import { describe, expect, it } from "vitest";
import { familyKeep } from "@/lib/report/family-keep";
import { LOCALES, wordsFor } from "@/lib/words/catalogue";
import { LOG_SOURCE } from "./family-log-fixture";

describe("what a page's script is told", () => {
  it("is the seven days that can still be sent, by the server's day, and words with places for what the phone knows", () => {
    const keep = familyKeep(wordsFor("en"), LOG_SOURCE);
    expect(keep.days.map(([day]) => day)).toEqual([
      ...["2026-03-01", "2026-02-28", "2026-02-27", "2026-02-26", "2026-02-25", "2026-02-24", "2026-02-23"],
    ]);
    expect(keep.days[0]?.[1]).toBe("Sun 1 Mar");
    expect([keep.action, keep.most]).toEqual(["/api/family/page/practice", { minutes: 300, balls: 1000 }]);
    expect([keep.words.minutes, keep.words.line, keep.words.refused]).toEqual([
      ...["{minutes} min", "{day}: {said}", "Not saved. {why}"],
    ]);
  });

  it("is said in every language, each place in it", () => {
    for (const locale of LOCALES) {
      const { words } = familyKeep(wordsFor(locale), LOG_SOURCE);
      for (const [word, place] of [
        ...([
          ["minutes", "{minutes}"],
          ["balls", "{balls}"],
          ["line", "{day}"],
          ["line", "{said}"],
        ] as const),
        ...([
          ["refused", "{why}"],
          ["drop", "{said}"],
          ["dead", "{said}"],
        ] as const),
      ] as const)
        expect([locale, word, words[word]]).toEqual([locale, word, expect.stringContaining(place)]);
      expect(Object.values(words).every((text) => text !== "")).toBe(true);
    }
  });
});
