import type { Verdict } from "@/lib/domain/track-verdict";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { type Judgement, judgeTrack } from "@/lib/verdict/judge-track";
import { judgedSeries } from "@/lib/verdict/judged-series";
import { learnNoise, noiseAlways } from "@/lib/verdict/noise";
import { POLICY, type Policy } from "@/lib/verdict/policy";
import { rosterList } from "@/lib/verdict/roster-list";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { DemoStudent } from "./demo-entries";
import type { Expectation, StudentPlan } from "./demo-plan";
import { demoTracks } from "./demo-roster";

/** The policy in force, without the search for a plan: no story is about one, and it is two fifths of the work. */
const WITHOUT_PLANS: Policy = { ...POLICY, settleSessions: 1 };

/** The newest noise model of each pool, by the pool's name. */
export type NoiseByPool = ReadonlyMap<string, NoiseModel>;

/** Learns the noise of every pool from whole seasons. */
export function learnPools(histories: readonly TrackHistory[]): NoiseByPool {
  const pools = new Map<string, TrackHistory[]>();
  for (const history of histories) {
    const pool = history.judged.pool ?? "";
    pools.set(pool, [...(pools.get(pool) ?? []), history]);
  }
  return new Map(
    [...pools].map(([pool, tracks]) => [
      pool,
      learnNoise(
        tracks.map((track) => judgedSeries(track.judged, POLICY).series),
        POLICY,
      ),
    ]),
  );
}

/** A judged track of the demo, and whether the roster's list holds it at the end. */
export interface JudgedDemoTrack {
  readonly studentId: string;
  readonly history: TrackHistory;
  readonly judgement: Judgement;
  readonly listed: boolean;
}

/** Judges one track with the newest model of its pool at every look. */
export function judgeHistory(history: TrackHistory, pools: NoiseByPool): Judgement {
  const model = pools.get(history.judged.pool ?? "");
  if (model === undefined) throw new RangeError(`no noise model: ${history.judged.pool}`);
  return judgeTrack(history.judged, noiseAlways(model), WITHOUT_PLANS, "looks");
}

/** Everybody's season judged, and the noise models that served. */
export interface JudgedDemo {
  readonly tracks: readonly JudgedDemoTrack[];
  readonly pools: NoiseByPool;
}

/** Judges everybody's season, the roster's list included. */
export function judgeDemo(students: readonly DemoStudent[]): JudgedDemo {
  const histories = students.flatMap((student) => demoTracks(student));
  const pools = learnPools(histories);
  const judgements = histories.map((history) => judgeHistory(history, pools));
  const { latest } = rosterList(
    judgements.map((judgement) => judgement.listedLooks),
    POLICY.listShare,
    POLICY,
  );
  const tracks = histories.map((history, i) => ({
    studentId: history.studentId,
    history,
    judgement: judgements[i] as Judgement,
    listed: latest[i] as boolean,
  }));
  return { tracks, pools };
}

/** Position among the judged sessions of the look that first proved the latest change; null: none is proved. */
function latestProof(judgement: Judgement): number | null {
  const { change, looks } = judgement.verdict;
  if (change === null) return null;
  const at = (looks ?? []).findIndex((look) => look.date === change.provedOn);
  return at < 0 ? null : at;
}

/** Whether the owning rule holds when the track is judged up to a position. */
function ownedAt(history: TrackHistory, pools: NoiseByPool, at: number): boolean {
  const judged = { ...history.judged, sessions: history.judged.sessions.slice(0, at + 1) };
  return judgeHistory({ ...history, judged }, pools).verdict.ownedSince !== null;
}

function sessionMeans(history: TrackHistory): number[] {
  return history.judged.sessions
    .filter((session) => session.use !== false && session.swings.length > 0)
    .map((session) => session.swings.reduce((sum, value) => sum + value, 0) / session.swings.length);
}

/** Whether the last films look like a change to the naked eye, as the story wants it. */
export function lures(expected: Expectation, history: TrackHistory): boolean {
  if (expected.lure === undefined) return true;
  const { count, last, before } = expected.lure;
  const means = sessionMeans(history);
  const earlier = means.slice(0, -count);
  const average = earlier.reduce((sum, mean) => sum + mean, 0) / earlier.length;
  return (
    means.slice(-count).every((mean) => mean >= last[0] && mean <= last[1]) &&
    average >= before[0] &&
    average <= before[1]
  );
}

/** In what a judged track differs from the story; empty: it tells it. */
export function differences(
  expected: Expectation,
  track: Pick<JudgedDemoTrack, "history" | "judgement">,
  pools: NoiseByPool,
): readonly string[] {
  const { verdict } = track.judgement;
  const found: string[] = [];
  if (!expected.words.includes(verdict.verdict)) found.push(`says ${verdict.verdict}`);
  const before: readonly Verdict[] = verdict.changes.slice(0, -1).map((change) => change.verdict);
  if (expected.earlier !== null && before.join() !== expected.earlier.join()) found.push(`after ${before.join()}`);
  const proof = latestProof(track.judgement);
  const between = expected.provedBetween;
  if (between !== null && (proof === null || proof < between[0] || proof > between[1])) {
    found.push(`proved at ${proof}`);
  }
  if (!lures(expected, track.history)) found.push("the last films don't look like a change");
  for (const at of expected.ownedAt ?? []) {
    if (!ownedAt(track.history, pools, at)) found.push(`not owned at ${at}`);
  }
  return found;
}

/** The track of a student's story among judged ones; throws where it isn't read at all. */
export function storyOf<T extends { readonly history: TrackHistory }>(
  plan: StudentPlan,
  expected: Expectation,
  tracks: readonly T[],
): T {
  const found = tracks.find(
    ({ history }) => history.studentId === plan.id && history.fundamental.id === expected.fundamentalId,
  );
  if (found === undefined) throw new RangeError(`${plan.alias} isn't read for ${expected.fundamentalId}`);
  return found;
}
