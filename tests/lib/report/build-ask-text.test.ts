import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { FILM_CARES } from "@/lib/domain/film-plan";
import { HANDS } from "@/lib/domain/handedness";
import { ASK_LETTERS, type AskSource, buildAskText } from "@/lib/report/build-ask-text";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
/** Words that no family is told (SEASON.md 25), with their endings. */
const NEVER =
  /\b(film(s|ed|ing)?|levels?|bands?|settle[ds]?|square[dr]?|set-?ups?|prov(ed|en|es?)|sessions?|tracks?|verdicts?|evidence|sway|tilt|hinge|trail|lead)\b/i;

const FACE = { view: "face-on", swings: 5 } as const;
const BEHIND = { view: "down-the-line", swings: 3 } as const;
const named = (...ids: readonly string[]) => BUILT_IN.filter(({ id }) => ids.includes(id));
const source: AskSource = {
  kind: "video",
  alias: "Ari",
  hand: "right",
  club: "with the 7-iron",
  dueOn: "2026-11-19",
  videos: [FACE],
  care: [],
  fundamentals: named("trail-v", "setup-tilt"),
};
const said = (change: Partial<AskSource> = {}) => buildAskText(words, { ...source, ...change });

describe("what a family is asked for", () => {
  it("is the day, the swings, the place of the phone, what is looked at, and what to do about pain", () =>
    expect(said()).toEqual({
      text: "Ari: the next video, please, by Thursday 19 November. 5 swings with the 7-iron, from the front. Phone on a stand, 4 big steps from the ball, as high as your hands. Seen from the phone, the target is on the right. We will look at: the grip of your right hand; how you lean to the side at the start. If anything hurts: no video, and tell us.",
      leftOut: [],
    }));

  it("turns left and right with the student's hand", () => {
    expect(said({ hand: "left" }).text).toContain("the target is on the left");
    expect(said({ hand: "left" }).text).toContain("the grip of your left hand");
    expect(said({ videos: [BEHIND] }).text).toContain("you are to the left of the ball");
    expect(said({ videos: [BEHIND], hand: "left" }).text).toContain("you are to the right of the ball");
  });

  it("says one swing as one, two videos in one sentence, and no club where none is known", () => {
    expect(said({ videos: [{ ...FACE, swings: 1 }], club: "" }).text).toContain(" One swing, from the front. ");
    expect(said({ videos: [FACE, BEHIND] }).text).toContain(
      "5 swings with the 7-iron, from the front, and 3 from behind.",
    );
  });

  it("reminds without a word of blame, of the day and the swings alone; of what can't be read, of the day alone", () => {
    expect(said({ kind: "remind" }).text).toBe(
      "Ari: we hoped for a video by Thursday 19 November. Nothing is lost. Please send it when you can. 5 swings with the 7-iron, from the front. If anything hurts: no video, and tell us.",
    );
    expect(said({ kind: "remind", videos: [] }).text).not.toMatch(/swing/);
  });

  it("never holds a word of the trade, whatever is asked, for both hands", () => {
    for (const hand of HANDS)
      for (const kind of ["video", "remind"] as const)
        expect(
          said({ hand, kind, videos: [FACE, BEHIND], care: FILM_CARES, fundamentals: named("hinge") }).text,
        ).not.toMatch(NEVER);
    for (const each of BUILT_IN) expect(said({ fundamentals: [each] }).text).not.toMatch(NEVER);
  });

  it("stays within 600 letters for any three fundamentals, both videos, every care and the longest alias of a form", () => {
    let cut = 0;
    for (const hand of HANDS)
      for (const first of BUILT_IN)
        for (const second of BUILT_IN) {
          const fundamentals = [first, second, { id: "own-x", ownName: "n".repeat(80) } as const];
          const all = said({ hand, alias: "A".repeat(60), videos: [FACE, BEHIND], care: FILM_CARES, fundamentals });
          expect(all.text.length).toBeLessThanOrEqual(ASK_LETTERS);
          expect(all.text).toContain("If anything hurts");
          if (all.leftOut.length > 0) cut += 1;
        }
    expect(cut).toBeGreaterThan(0);
  });

  it("says what it left out, the care after what is looked at", () => {
    const long = { alias: "A".repeat(60), videos: [FACE, BEHIND] };
    expect(said({ ...long, care: FILM_CARES }).leftOut).toEqual(["care", "parts"]);
    expect(said({ ...long, care: ["yaw"] }).leftOut).toEqual(["parts"]);
    expect(said({ ...long, club: "c".repeat(400) }).text).not.toContain("Seen from the phone");
  });

  it("in German is asked of a family as “ihr”, within its letters for all that may be asked", () => {
    const german = wordsFor("de");
    const club = german.say("ask.with", { club: "7-iron" });
    expect(buildAskText(german, { ...source, club }).text).toBe(
      "Ari: Bitte macht das nächste Video bis Donnerstag, 19. November. 5 Schwünge mit dem Schläger „7-iron“, von vorn. Handy auf einen Ständer, 4 große Schritte weg vom Ball, so hoch wie die Hände. Vom Handy aus ist das Ziel rechts. Das sehen wir an: der Griff der rechten Hand; die Neigung am Start. Tut etwas weh: kein Video, und sagt es uns.",
    );
    for (const hand of HANDS)
      for (const kind of ["video", "remind"] as const) {
        const all = { ...source, hand, kind, club, videos: [FACE, BEHIND], care: FILM_CARES, fundamentals: BUILT_IN };
        const { text } = buildAskText(german, all);
        expect(text.length).toBeLessThanOrEqual(ASK_LETTERS);
        expect(text).toContain("Tut etwas weh");
        expect(text).not.toMatch(/[{}]|\.\.| {2}|\b(the|swing|phone|and)\b/);
      }
  });
});
