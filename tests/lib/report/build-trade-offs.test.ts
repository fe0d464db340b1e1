import { expect, it } from "vitest";
import { buildTradeOffs } from "@/lib/report/build-trade-offs";
import { wordsFor } from "@/lib/words/catalogue";
import { madeChange, madeSeason, madeSeasonTrack, plain } from "./made-season";

const words = wordsFor("en");

function track(id: string, verdict: "gain" | "slip", days: readonly [string, string], listed = true) {
  const change = madeChange(verdict, ...days, verdict === "gain" ? 14 : 1, verdict === "gain" ? 5 : -6);
  return madeSeasonTrack(id, { verdict, listed, changes: [change], change });
}

const sway = track("hip-sway", "gain", ["2031-03-01", "2031-03-20"]);
const tilt = track("tilt-kept", "slip", ["2031-03-10", "2031-04-02"]);

it("Jun: sway better, tilt kept worse in the same days, both said, and no cause", () => {
  const part = buildTradeOffs(words, madeSeason([sway, tilt]));
  expect(part?.heading).toBe("One up, one down over the same days");
  expect(part?.texts.map(plain)).toEqual([
    "Hip sway, top moved toward its band: 14.0 % → 5.0 %, 1–20 Mar. Tilt kept moved away from its band: 1.0° → −6.0°, 10 Mar – 2 Apr.",
    "Both are proved, and their days overlap. Whether one made the other no film can say; look at both before the next drill.",
  ]);
});

it("what is proved for its track alone is no part of it, nor what came at another time", () => {
  expect(
    buildTradeOffs(words, madeSeason([sway, track("tilt-kept", "slip", ["2031-03-10", "2031-04-02"], false)])),
  ).toBeNull();
  expect(
    buildTradeOffs(words, madeSeason([sway, track("tilt-kept", "slip", ["2031-03-21", "2031-04-02"])])),
  ).toBeNull();
  expect(buildTradeOffs(words, madeSeason([]))).toBeNull();
});

it("contact that went down with it is said beside it: 16 of 20 solid in each of eight sessions, then 5 of 20", () => {
  const sessions = Array.from({ length: 16 }, (_, at) => ({
    ...{ id: `x${at}`, day: `2031-0${1 + Math.floor(at / 4)}-${String(2 + (at % 4) * 7).padStart(2, "0")}` },
    ...{ clubGroup: "iron", circumstance: "unaided", setAsideReason: null, balls: 20, solid: at < 8 ? 16 : 5 },
  }));
  const part = buildTradeOffs(words, madeSeason([sway], { sessions: sessions as never }));
  expect(part?.texts[0]).toMatch(
    /^Hip sway, top moved toward its band: .*\. Solid strikes: about \d+ → \d+ of 100, .*\.$/,
  );
});
