import { expect, test } from "vitest";
import { COUNTED_AS } from "@/lib/domain/counted-as";
import { FILM_STATES } from "@/lib/report/film-state";
import { OPEN_WHYS } from "@/lib/report/open-why";
import { wordsFor } from "@/lib/words/catalogue";

test("a student is counted for each why of a track, each state of a film and what is recorded, and each has its words", () => {
  expect([...COUNTED_AS].sort()).toEqual(
    [
      ...OPEN_WHYS.map((why) => `open-${why}`),
      ...FILM_STATES.map((state) => `film-${state}`),
      ...["filmed-on-a-drill", "filmed-waiting", "filmed-unrecorded"],
    ].sort(),
  );
  const words = wordsFor("en");
  expect(COUNTED_AS.filter((as) => !words.has(`roster.counted.${as}`))).toEqual([]);
});
