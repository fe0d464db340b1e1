import { describe, expect, it } from "vitest";
import type { BuiltInId } from "@/lib/domain/catalogue";
import { fingerprintNotices, saySessionPhone, seasonFingerprints } from "@/lib/report/build-fingerprint";
import { buildSeasonChart } from "@/lib/report/build-season-chart";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseByName } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { type TrackHistory, trackHistories } from "@/lib/verdict/track-history";
import { wordsFor } from "@/lib/words/catalogue";
import { type Film, filmedRecord, SQUARE_FILMS } from "../verdict/filmed-record";

const words = wordsFor("en");
const tracksOf = (films: readonly Film[]): readonly TrackHistory[] => trackHistories(filmedRecord(films), "2027-01-01");
const of = (tracks: readonly TrackHistory[], id: BuiltInId): TrackHistory =>
  tracks.find((history) => history.fundamental.id === id) as TrackHistory;
const chartOf = (history: TrackHistory) =>
  buildSeasonChart(words, {
    history,
    verdict: judgeTrack(history.judged, noiseByName([]), POLICY, "looks").verdict,
    drills: [],
    events: [],
    asOf: "2026-07-01",
    from: null,
  });

describe("what a page says of the phone", () => {
  const widened = tracksOf([...SQUARE_FILMS, { yaw: 9 }, { yaw: 9 }]);
  const beyond = tracksOf([...SQUARE_FILMS, { yaw: 14 }]);

  it("one notice for films in a row: which fundamentals, which way, how far, what was done, what to check", () => {
    const [notice, ...more] = fingerprintNotices(words, of(widened, "setup-tilt"));
    expect(more).toEqual([]);
    expect(notice).toContain("2 films from Thu 30 Apr 2026 to Sun 10 May 2026, face-on:");
    for (const name of ["Side tilt, setup", "Wrist hinge", "Side tilt, top", "Side tilt, impact"])
      expect(notice).toContain(`${name} (+`);
    expect(notice).not.toContain("Hip sway");
    const degrees = Math.abs(of(widened, "setup-tilt").sessions[7]?.fingerprint?.offBy ?? 0).toFixed(0);
    expect(notice).toContain(`about ${degrees}° too far toward the target`);
    expect(notice).toContain("the doubt of those films is widened here, to ±");
    expect(notice).toContain("film once more with the phone square in front");
  });

  it("away from the target is said so", () => {
    expect(fingerprintNotices(words, of(tracksOf([...SQUARE_FILMS, { yaw: -9 }]), "hinge"))[0]).toContain(
      "too far away from the target",
    );
  });

  it("beyond what a film bears: set aside, a hollow dot with its reason; the sway is used and says how little it minds", () => {
    const hinge = of(beyond, "hinge");
    expect(fingerprintNotices(words, hinge)[0]).toContain("that film is set aside here");
    const drawn = chartOf(hinge).sessions[6];
    expect(drawn).toMatchObject({ mark: "set-aside" });
    expect(drawn?.reason).toMatch(/the phone stood about 1\d° off$/);
    const sway = of(beyond, "hip-sway");
    expect(chartOf(sway).sessions[6]?.mark).toBe("used");
    expect(fingerprintNotices(words, sway)[0]).toContain("widened here, to ±");
  });

  it("a widened session's bar is drawn by its widened doubt: 1.96 x at least the camera's part", () => {
    const history = of(widened, "setup-tilt");
    const [before, now] = [chartOf(history).sessions[0], chartOf(history).sessions[6]];
    const half = (session: typeof now): number => ((session?.high ?? 0) - (session?.low ?? 0)) / 2;
    expect(now?.mark).toBe("used");
    expect(half(now)).toBeGreaterThan(1.96 * (history.sessions[6]?.captureSd ?? 0));
    expect(half(now)).toBeGreaterThan(2 * half(before));
  });

  it("the season says it once, and counts what was done: five set aside, two with more doubt", () => {
    const [notice, ...more] = seasonFingerprints(words, beyond);
    expect(more).toEqual([]);
    expect(notice).toContain("Film of Thu 30 Apr 2026, face-on:");
    expect(notice).toContain("2 fundamentals carry more doubt for it. 5 are set aside.");
    expect(saySessionPhone(words, beyond, "f6")[0]).toMatch(/^phone seems about 1\d° off, face-on$/);
    expect(saySessionPhone(words, beyond, "f5")).toEqual([]);
  });

  it("nothing found, nothing said", () => {
    const plain = tracksOf(SQUARE_FILMS);
    expect(seasonFingerprints(words, plain)).toEqual([]);
    expect(fingerprintNotices(words, of(plain, "hinge"))).toEqual([]);
  });
});
