import { describe, expect, it } from "vitest";
import { buildBriefKnown } from "@/lib/report/build-brief-known";
import { wordsFor } from "@/lib/words/catalogue";
import { change, OUTSIDE, source, student, track } from "./brief-parts";

const words = wordsFor("en");
const films = (...days: string[]) => ({ days });
const one = (id: string) => student(id, `Tia ${id}`, [track(id, "hinge", OUTSIDE, films("2026-08-24"))]);
const two = student("s2", "Bea", [
  track("s2", "hinge", {}, films("2026-08-17", "2026-08-24")),
  track("s2", "hip-sway", { position: "edge" }, films("2026-08-17", "2026-08-24")),
]);

describe("what is known in the first weeks", () => {
  it("week 2: where everything lies, and that nothing needs to be proved", () => {
    const known = buildBriefKnown(words, source([one("s1"), two, student("s3", "Cal")]));
    expect(known?.heading).toBe("3 fundamentals have a level: 1 inside the band, 1 on its edge, 1 outside");
    expect(known?.text).toBe(
      "Nothing is proved yet, and needn’t be: whether something changes takes four films on different days. No student has that many; where each fundamental is, with its doubt, is known from the first film on.",
    );
  });

  it("one student, no film: says that, and no more", () => {
    expect(buildBriefKnown(words, source([student("s1", "Ari")]))?.heading).toBe("No film yet, so nothing is known");
  });

  it("everybody with four films: a first look seldom proves anything", () => {
    expect(buildBriefKnown(words, source([student("s1", "Ari", [track("s1", "hinge")])]))?.text).toContain(
      "a first look seldom",
    );
  });

  it("is over once a track stands on the list, and is none of an empty academy; a gain for its track alone ends nothing", () => {
    const gain = { verdict: "gain", change: change("gain", "2026-08-24") } as const;
    const of = (listed: boolean) => source([student("s1", "Ari", [track("s1", "hinge", { ...gain, listed })])]);
    expect(buildBriefKnown(words, of(true))).toBeNull();
    expect(buildBriefKnown(words, of(false))).not.toBeNull();
    expect(buildBriefKnown(words, source([]))).toBeNull();
  });
});
