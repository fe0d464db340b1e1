import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import * as worker from "@/app/_server/analysis/analysis-worker";
import { answerOnce } from "@/app/_server/analysis/kept-answers";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways, START_NOISE } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { flat, madeTrack } from "../../lib/verdict/made-track";

const model = startNoiseModel(START_NOISE);
const judgedOf = (seed: number) => {
  const track = madeTrack(seed, [...flat(9, 0), ...flat(2, 10)]);
  return { track, verdict: judgeTrack(track, noiseAlways(model), POLICY, "latest").verdict, listedLooks: [] };
};
const judged = judgedOf(2);
const ask = (sessions: number, of = judged) =>
  answerOnce({ kind: "plan", judged: of, models: [model], plan: { sessions, swingsEach: 5, care: 1 } });

let worked: ReturnType<typeof vi.spyOn>;
beforeAll(() => {
  worked = vi.spyOn(worker, "workOn");
});
afterAll(() => worked.mockRestore());

describe("answers about a judged track", () => {
  it("the same question is worked out once, even when asked twice at once", async () => {
    const before = worked.mock.calls.length;
    const [one, two] = await Promise.all([ask(3), ask(3)]);
    expect(one.answer).not.toBeNull();
    expect(two).toBe(one);
    expect(await ask(3)).toBe(one);
    expect(worked.mock.calls.length - before).toBe(1);
  });

  it("another plan, a corrected reading and another policy’s verdict are other questions", async () => {
    const before = worked.mock.calls.length;
    await ask(4);
    const [first, ...rest] = judged.track.sessions;
    if (!first) throw new Error("no session");
    const corrected = { ...judged.track, sessions: [{ ...first, swings: [...first.swings.slice(1), 0.5] }, ...rest] };
    const other = await ask(3, { ...judged, track: corrected });
    expect(worked.mock.calls.length - before).toBe(2);
    expect(other.answer).not.toEqual((await ask(3)).answer);
  });

  it("other noise under the same name is another question: an import that is undone gives a model's name to another", async () => {
    const before = worked.mock.calls.length;
    const ask = (of: NoiseModel) =>
      answerOnce({ kind: "plan", judged, models: [of], plan: { sessions: 3, swingsEach: 5, care: 1 } });
    await ask(structuredClone(model));
    const other = await ask({ ...model, cells: model.cells.slice(0, 4).map((cell) => ({ ...cell, weight: 1 / 4 })) });
    expect(other.answer).not.toEqual((await ask(model)).answer);
    expect(worked.mock.calls.length - before).toBe(1);
  });

  it("the level that is asked for alone is the one that a whole judging comes to", async () => {
    const track = { track: judged.track, earlier: judgedOf(7).track, models: [model] };
    const whole = await worker.workOn({ kind: "judge", ...track });
    const { level } = await answerOnce({ kind: "level", ...track });
    expect(level).not.toBeNull();
    expect(level).toEqual(whole.judged.verdict.levelNow);
  });

  it("what failed is tried again", async () => {
    const fresh = judgedOf(5);
    worked.mockImplementationOnce(() => Promise.reject(new Error("the worker ended")));
    await expect(ask(3, fresh)).rejects.toThrow("the worker ended");
    await new Promise((resolve) => setImmediate(resolve));
    expect((await ask(3, fresh)).kind).toBe("plan");
  });
});
