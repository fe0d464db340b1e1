import { describe, expect, it } from "vitest";
import { findFundamental } from "@/lib/domain/catalogue";
import type { DrillPractice } from "@/lib/domain/drill-practice";
import { buildDrillSince, type DrillSince } from "@/lib/report/build-drill-since";
import { retentionFilms } from "@/lib/verdict/retention-films";
import { wordsFor } from "@/lib/words/catalogue";
import { sayLevel } from "@/lib/words/number-words";
import { filmOf, intervalOf, trackOf } from "./made-drill-track";

const words = wordsFor("en");
const practice: DrillPractice = {
  ...{
    from: "2026-07-20",
    to: "2026-08-30",
    days: 42,
    stoppedDays: 0,
    restDays: 7,
    asked: 25,
    askedMinutes: null,
    practised: 18,
  },
  ...{ minutes: 180, balls: null, lastLogged: "2026-08-20", unnamed: 2 },
};
const films = [filmOf("2026-07-01", 80), filmOf("2026-08-19", 88, 9), filmOf("2026-08-20", 90, null, "lesson")];
const made = trackOf(films);
const asked = { from: "2026-07-20", loggedFrom: "2026-07-20", rest: 7 };
const since: DrillSince = {
  ...{ given: { start: "2026-07-20" }, fundamental: findFundamental("hinge", []), practice, rest: 7 },
  track: {
    ...{ ...made, href: "/students/s/hinge", films: retentionFilms(made.history, [], asked) },
    retention: { kind: "held", films: 1, least: 9, most: 9, by: "said" },
  },
  contact: { before: { solid: 12, balls: 30 }, since: { solid: 22, balls: 40 } },
};
const factsOf = (change: Partial<DrillSince> = {}) =>
  Object.fromEntries(
    buildDrillSince(words, { ...since, ...change }).facts.map(({ name, value, note }) => [name, [value, note]]),
  );

describe("what happened since a drill began", () => {
  it("tells films by whether they count, levels, what stays, practice asked and logged, and contact as counts", () => {
    expect(buildDrillSince(words, since)).toMatchObject({
      heading: "Real gain: Wrist hinge",
      paragraphs: [expect.stringContaining("1–10 Aug")],
    });
    expect(factsOf()).toEqual({
      "Films since then": [
        "one that counts, one before",
        "one more in a lesson or right after practice: drawn, never judged",
      ],
      "Level before": [sayLevel(words, intervalOf(80), "deg"), ""],
      "Level now": [sayLevel(words, intervalOf(88), "deg"), "inside"],
      "Without practice": ["Held 9 days after the last practice, on one film: it stays without practice.", ""],
      Practice: [
        "18 days logged of 25 asked, 180 minutes, 20 Jul – 30 Aug",
        "the last on 20 Aug; the other days aren’t logged, and may have been practised; 7 days kept free before the film ask for no practice; practice that names no drill is logged on 2 more days",
      ],
      Contact: [
        "solid 22 of 40 since then, 12 of 30 before in the season",
        "counts alone; whether the share changed stands on the season’s page",
      ],
    });
  });

  it("a change from before the drill is no level before it, and without a gain nothing is asked of what stays", () => {
    const late = factsOf({ given: { start: "2026-08-11" } });
    expect(late["Level before"]?.[0]).toContain("no change since then is proved");
    expect(late["Without practice"]?.[0]).toBe("asked once a gain since then is proved");
    const open = { ...made, verdict: { ...made.verdict, change: null, changes: [], verdict: "open" as const } };
    const none = factsOf({ track: { ...open, films: [], retention: null, href: "" } });
    expect(none["Level before"]?.[0]).toContain("not told apart from the level now");
    expect(none["Without practice"]?.[0]).toBe("asked once a gain since then is proved");
  });

  it("a gain that isn’t on the roster’s list is never called one", () => {
    const alone = { ...made, verdict: { ...made.verdict, listed: false } };
    const part = buildDrillSince(words, { ...since, track: { ...alone, films: [], retention: null, href: "" } });
    expect(part.heading).toBe("Not settled: Wrist hinge");
    expect(part.paragraphs.join(" ")).toContain(words.say("listing.alone"));
    expect(part.facts.find(({ name }) => name === "Level before")?.value).toBe(words.say("drill-since.before.open"));
  });

  it("nothing measured, nothing logged, nothing struck, not begun: each says so", () => {
    const bare = factsOf({
      track: null,
      contact: { before: { solid: 0, balls: 0 }, since: { solid: 0, balls: 0 } },
      practice: { ...practice, asked: null, practised: 0, minutes: null, lastLogged: null, unnamed: 0, restDays: 0 },
    });
    expect(Object.keys(bare)).toEqual(["Films since then", "Practice"]);
    expect(bare["Films since then"]?.[0]).toBe("none that counts, none before");
    expect(bare.Practice?.[1]).toBe(
      "nothing logged is not the same as not practised; days a week weren’t said, so nothing is counted as asked",
    );
    expect(buildDrillSince(words, { ...since, track: null }).heading).toBe("Wrist hinge: nothing is measured yet");
    expect(buildDrillSince(words, { ...since, practice: null })).toMatchObject({
      ...{ heading: "It has not begun yet", facts: [] },
    });
  });
});
