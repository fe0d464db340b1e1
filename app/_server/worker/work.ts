import type { JudgedTrack } from "@/lib/domain/judged-track";
import { fitNoiseModel } from "@/lib/stats/fit-noise-model";
import { askPlan } from "@/lib/verdict/ask-plan";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { judgedSeries } from "@/lib/verdict/judged-series";
import { noiseByName, teaches } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { reachCurve } from "@/lib/verdict/reach-curve";
import { smallestProvable } from "@/lib/verdict/smallest-provable";
import { squarePlan } from "@/lib/verdict/square-plan";
import { startLevel } from "@/lib/verdict/start-level";
import type { NoiseFor } from "@/lib/verdict/track-looks";
import type { Task, TaskResult } from "./tasks";

/** A track with the level that the season before left, as a starting belief. */
export function withStartLevel(track: JudgedTrack, earlier: JudgedTrack | null, noiseFor: NoiseFor): JudgedTrack {
  const first = track.sessions[0]?.date;
  const lastEarlier = earlier?.sessions.at(-1)?.date;
  if (earlier === null || first === undefined || lastEarlier === undefined) return track;
  const belief = startLevel(judgeTrack(earlier, noiseFor, POLICY, "latest").verdict, lastEarlier, first);
  return belief ? { ...track, startLevel: belief } : track;
}

/** Does one task; the same in the worker, in commands and in tests. */
export function work(task: Task): TaskResult {
  if (task.kind === "learn") {
    const pool = task.tracks
      .map((track) => judgedSeries(track, POLICY).series)
      .filter((series) => teaches(series, POLICY));
    return { kind: "learn", model: fitNoiseModel(pool, task.name) };
  }
  const noiseFor = noiseByName(task.models);
  if (task.kind === "square") {
    const { track, verdict } = task.judged;
    return { kind: "square", plan: squarePlan(track, verdict, noiseFor, POLICY) };
  }
  if (task.kind === "curve") {
    const { track, verdict } = task.judged;
    return { kind: "curve", curve: reachCurve(track, verdict, noiseFor, POLICY) };
  }
  if (task.kind === "plan") {
    const { track, verdict } = task.judged;
    return { kind: "plan", answer: askPlan(track, verdict, task.plan, noiseFor, POLICY) };
  }
  if (task.kind === "provable")
    return { kind: "provable", provable: smallestProvable(task.track, noiseFor(undefined), POLICY, task.plan) };
  const track = withStartLevel(task.track, task.earlier, noiseFor);
  if (task.kind === "level")
    return { kind: "level", level: judgeTrack(track, noiseFor, POLICY, "latest").verdict.levelNow };
  const { verdict, listedLooks } = judgeTrack(track, noiseFor, POLICY, "looks");
  return { kind: "judge", judged: { track, verdict, listedLooks } };
}
