import { describe, expect, it } from "vitest";
import { asksProvable, buildFirstWeek } from "@/lib/report/build-first-week";
import type { FirstProvable } from "@/lib/report/season-source";
import { wordsFor } from "@/lib/words/catalogue";
import { levelOf } from "../verdict/made-work";
import { madeSeason, madeSeasonTrack, plain } from "./made-season";

const words = wordsFor("en");
const provable = (size: number | null) => ({ size, days: 56, swingsEach: 5 });
const track = (days: readonly string[]) =>
  madeSeasonTrack("foot-line", { position: "outside", levelNow: levelOf(9, 4) }, days);
const known = (found: FirstProvable) => new Map([["foot-line", found]]);

describe("the first films", () => {
  it("without a film: two on two days, before the first drill; what is missing stands in one line", () => {
    const part = buildFirstWeek(words, {
      ...madeSeason([], { consent: { kind: "none" }, clubGroup: null }),
      student: { id: "s1", alias: "Nia", birthYear: null, hand: "left", zone: "UTC", clubs: "" },
    });
    expect(part?.heading).toBe("Two films on two days, before the first drill");
    expect(part?.texts[0]).toBe(
      "Still missing: a consent to measure, the birth year, the usual club, two films on two days.",
    );
    expect([part?.table, part?.action.label]).toEqual([null, "Add the first film"]);
  });

  it("with one film: where it is with its doubt, the smallest change by a date, and what is lost without the second", () => {
    const part = buildFirstWeek(
      words,
      madeSeason([track(["2031-05-08"])], { provable: known({ after: provable(6.2), straight: provable(11.1) }) }),
    );
    expect(part?.heading).toBe("One film more, on another day, before the first drill");
    expect(part?.texts[0]).toBe("Still missing: a film of a second day, a face-on view.");
    // 8 May and 56 days are 3 July; today is 10 May, so that the count begins there: 5 July.
    expect(plain(part?.texts[2] ?? "")).toBe(
      "Foot line: with a second film first, a lasting change of 7° or more would be proved by 5 Jul, 4 times in 5. Straight after this one it would have to be 12°.",
    );
    expect(part?.table?.rows.map(({ cells }) => cells.map(plain))).toEqual([
      ["Foot line", "9 ± 4°", "outside, above by 1 to 9°", "7°, by 5 Jul"],
    ]);
  });

  it("says it where no likely size would be proved", () => {
    const source = (found: FirstProvable) => madeSeason([track(["2031-05-08"])], { provable: known(found) });
    const some = buildFirstWeek(words, source({ after: provable(6), straight: provable(null) }));
    expect(some?.texts[2]).toMatch(/Straight after this one no change of a likely size would be\.$/);
    const none = buildFirstWeek(words, source({ after: provable(null), straight: null }));
    expect([none?.texts.length, none?.table?.rows[0]?.cells[3]]).toEqual([2, "none of a likely size, at this rhythm"]);
  });

  it("with two the first drill can begin; with four there is no such part any more", () => {
    const days = ["2031-05-01", "2031-05-08", "2031-05-09", "2031-05-10"];
    const headings = [2, 3, 4].map(
      (count) => buildFirstWeek(words, madeSeason([track(days.slice(0, count))]))?.heading,
    );
    expect(headings).toEqual([
      "The first drill can begin: there are films of 2 days",
      "The first drill can begin: there are films of 3 days",
      undefined,
    ]);
  });

  it("asks the engine with one film to three", () => {
    expect([0, 1, 2, 3, 4].map(asksProvable)).toEqual(["no", "first", "next", "next", "no"]);
  });
});
