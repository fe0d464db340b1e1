import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { buildAsideRest } from "@/lib/report/build-aside";
import type { ApartReason, HistorySession, TrackHistory } from "@/lib/verdict/track-history";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const footLine = BUILT_IN.find((each) => each.id === "foot-line");
if (footLine === undefined) throw new Error("no such fundamental");
const history = { fundamental: footLine, clubGroup: "iron" } as unknown as TrackHistory;
const rest = (apart: ApartReason | null) =>
  buildAsideRest(words, {
    student: { id: "s", alias: "Zee" },
    sessionId: "film1",
    history,
    entry: { apart } as unknown as HistorySession,
  });

describe("how a session stands beside the form that sets it aside", () => {
  it("a session that counts is said to", () => {
    expect(rest(null).heading).toBe("Foot line: this session counts");
    expect(rest(null).texts).toHaveLength(1);
  });

  it.each([
    [{ kind: "camera", why: "offset-too-large", offBy: 60 }, /how many centimetres the phone was noted off the line/],
    [{ kind: "camera", why: "yaw-too-large", offBy: 9 }, /noted off square/],
    [{ kind: "camera", why: "no-stick", offBy: 60 }, /no stick in the picture/],
    [{ kind: "camera", why: "pitch-too-large", offBy: null }, /heights of lens and hands/],
    [{ kind: "camera", why: "too-near", offBy: null }, /distance of the phone/],
    [{ kind: "camera", why: "too-slow", offBy: null }, /pictures a second/],
    [{ kind: "fingerprint", offBy: 8, view: "face-on" }, /No single fact does it/],
    [{ kind: "circumstance", circumstance: "in-lesson", aid: null }, /in a lesson/],
    [{ kind: "before", begins: "2026-03-01" }, /Nothing is to be corrected/],
  ] as const)("%j says which fact the rule rests on", (apart, fact) => {
    const { texts, links } = rest(apart);
    expect(texts[0]).toMatch(fact);
    expect(links[0]?.href).toBe("/students/s/sessions/film1/facts");
  });

  it("what somebody set aside needs no other fact", () => {
    expect(rest({ kind: "set-aside", reason: "rain" }).texts).toHaveLength(1);
    expect(rest({ kind: "set-aside", reason: "rain" }).heading).toBe("Foot line: set aside: rain");
  });

  it("from nowhere in particular it leads back to the season", () => {
    const bare = buildAsideRest(words, {
      student: { id: "s", alias: "Zee" },
      sessionId: "f",
      history: null,
      entry: null,
    });
    expect(bare.back.href).toBe("/students/s");
    expect(rest(null).back.href).toBe("/students/s/foot-line?club=iron");
  });
});
