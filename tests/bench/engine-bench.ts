import { evidence } from "@/lib/stats/evidence";
import { evidenceLooks } from "@/lib/stats/evidence-looks";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { posterior } from "@/lib/stats/posterior";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { judgedSeries } from "@/lib/verdict/judged-series";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { rosterList } from "@/lib/verdict/roster-list";
import { flat, step } from "@/seed/level-path";
import { learnAcademy, type Scenario, simulateTrack } from "../calibration/population";
import { type Measured, measure } from "./measured";

const SEED = 8;

/** A season of looks may take so long; the bound is for 40 sessions. */
const SEASON_BOUND_MS = 50;

const season = (sessions: number, labelled: "labelled" | undefined): Scenario => ({
  name: "bench",
  sessions,
  path: () => flat(0),
  change: null,
  ...(labelled
    ? {
        labelled,
        unlike: (plan) => ({
          ...plan,
          camera: {
            kind: "drawn",
            sds: plan.days.map(() => 1.5),
            placements: plan.days.map((_, i) => `spot ${i >> 2}`),
          },
        }),
      }
    : {}),
});

function seriesOf(sessions: number, labelled?: "labelled") {
  const scenario = season(sessions, labelled);
  return Array.from({ length: 24 }, (_, i) => judgedSeries(simulateTrack(scenario, SEED, i).track, POLICY).series);
}

function oneLook(noise: NoiseModel): readonly Measured[] {
  const [plain, tied] = [seriesOf(30), seriesOf(30, "labelled")];
  const pick = <T>(list: readonly T[], round: number): T => list[round % list.length] as T;
  return [
    measure("one look, 30 sessions: evidence", 40, null, (round) => void evidence(pick(plain, round), noise)),
    measure(
      "one look, 30 sessions, shared placements: evidence",
      40,
      null,
      (round) => void evidence(pick(tied, round), noise),
    ),
    measure(
      "one look, 30 sessions: evidence and all intervals",
      40,
      null,
      (round) => void posterior(pick(plain, round), noise),
    ),
  ];
}

function fullSeason(noise: NoiseModel): readonly Measured[] {
  const [plain, tied] = [seriesOf(40), seriesOf(40, "labelled")];
  const pick = <T>(list: readonly T[], round: number): T => list[round % list.length] as T;
  const tracks = Array.from({ length: 24 }, (_, i) => simulateTrack(season(40, undefined), SEED, i).track);
  return [
    measure(
      "40-session season, 40 looks: evidence",
      24,
      SEASON_BOUND_MS,
      (round) => void evidenceLooks(pick(plain, round), noise),
    ),
    measure(
      "40-session season, shared placements, 40 looks: evidence",
      24,
      SEASON_BOUND_MS,
      (round) => void evidenceLooks(pick(tied, round), noise),
    ),
    measure(
      "40-session season: words, intervals, share, owned, plan",
      24,
      null,
      (round) => void judgeTrack(pick(tracks, round), noiseAlways(noise), POLICY, "looks"),
    ),
  ];
}

/** An academy of 60 students and 8 fundamentals, 20 sessions each, from sessions to the roster's list. */
function academy(noise: NoiseModel): Measured {
  const changing: Scenario = { name: "academy", sessions: 20, path: (at) => step(0, 2.5, at), change: [6, 12] };
  const tracks = Array.from(
    { length: 480 },
    (_, i) => simulateTrack(i % 7 === 0 ? changing : season(20, undefined), SEED + 1, i).track,
  );
  const from = performance.now();
  const judged = tracks.map((track) => judgeTrack(track, noiseAlways(noise), POLICY, "looks").listedLooks);
  const judgedIn = performance.now() - from;
  const list = rosterList(judged, POLICY.listShare, POLICY);
  const total = performance.now() - from;
  return {
    what: "academy of 60 x 8, 20 sessions: every verdict, every look, the list",
    times: 1,
    median: total,
    slowest: total,
    also: `${(judgedIn / tracks.length).toFixed(1)} ms a track, list ${(total - judgedIn).toFixed(0)} ms, ${list.latest.filter(Boolean).length} listed`,
    bound: null,
  };
}

/** The engine's figures. */
export function engineFigures(): readonly Measured[] {
  const learning = measure(
    "learning the noise of a pool of 60 tracks",
    5,
    null,
    (round) => void learnAcademy(60, round),
  );
  const noise = learnAcademy(60, SEED);
  return [...oneLook(noise), ...fullSeason(noise), learning, academy(noise)];
}
