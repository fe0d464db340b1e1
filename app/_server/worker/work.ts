import { fitNoiseModel } from "@/lib/stats/fit-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { judgedSeries } from "@/lib/verdict/judged-series";
import { noiseByName, teaches } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { startLevel } from "@/lib/verdict/start-level";
import type { Task, TaskResult } from "./tasks";

/** Does one task; the same in the worker, in commands and in tests. */
export function work(task: Task): TaskResult {
  if (task.kind === "learn") {
    const pool = task.tracks
      .map((track) => judgedSeries(track, POLICY).series)
      .filter((series) => teaches(series, POLICY));
    return { kind: "learn", model: fitNoiseModel(pool, task.name) };
  }
  const noiseFor = noiseByName(task.models);
  let track = task.track;
  const first = track.sessions[0]?.date;
  const lastEarlier = task.earlier?.sessions.at(-1)?.date;
  if (task.earlier !== null && first !== undefined && lastEarlier !== undefined) {
    const belief = startLevel(judgeTrack(task.earlier, noiseFor, POLICY, "latest").verdict, lastEarlier, first);
    if (belief) track = { ...track, startLevel: belief };
  }
  const { verdict, listedLooks } = judgeTrack(track, noiseFor, POLICY, "looks");
  return { kind: "judge", judged: { track, verdict, listedLooks } };
}
