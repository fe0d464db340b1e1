import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { buildFigures } from "@/lib/report/build-figures";
import type { FundamentalSource } from "@/lib/report/fundamental-source";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { wordsFor } from "@/lib/words/catalogue";
import { flat, madeTrack } from "../verdict/made-track";

const words = wordsFor("en");
const tilt = BUILT_IN.find((each) => each.id === "setup-tilt");
if (tilt === undefined) throw new Error("no such fundamental");

/** A made track whose sessions at `aside` are set aside for rain. */
function source(levels: readonly number[], aside: readonly number[] = [], listed = true): FundamentalSource {
  const track = madeTrack(3, levels, { goal: { low: -5, high: 5 } });
  const judged = { ...track, sessions: track.sessions.map((each, at) => ({ ...each, use: !aside.includes(at) })) };
  const { verdict } = judgeTrack(judged, noiseAlways(startNoiseModel("start")), POLICY, "looks");
  return {
    student: { id: "s" },
    verdict: { ...verdict, listed, looks: verdict.looks?.map((look) => ({ ...look, listed })) },
    history: {
      fundamental: tilt,
      clubGroup: "iron",
      goal: { low: -5, high: 5 },
      goals: [{ low: -5, high: 5, from: "0001-01-01" }],
      sessions: judged.sessions.map((session, at) => ({
        session: { day: session.date },
        swings: session.swings.map((value, nth) => ({ number: nth + 1, value, read: value })),
        apart: aside.includes(at) ? { kind: "set-aside", reason: "rain" } : null,
      })),
    },
    figures: {
      noise: [{ name: "setup-tilt/iron#2", kind: "learned", learnedFrom: 41, learnedUpTo: "2026-05-03" }],
      reader: { readerSd: 1, offsetSd: 1.5, number: null },
    },
  } as unknown as FundamentalSource;
}
const part = (from: FundamentalSource) => {
  const made = buildFigures(words, from);
  if (made === null) throw new Error("no figures");
  return made;
};
const row = (from: FundamentalSource, name: string) =>
  part(from).figures.rows.find(({ cells }) => cells[0] === name)?.cells[1] ?? "";

describe("every number that went into a verdict", () => {
  const proved = source([...flat(12, 0), ...flat(8, 20)], [3]);

  it("the sessions judged and why another isn’t, with its day", () => {
    expect(row(proved, "Sessions judged")).toBe("19 of 20");
    expect(row(proved, "Not judged, and why")).toMatch(/^set aside: rain \(\d+ \w+\)$/);
    expect(row(source(flat(5, 0)), "Not judged, and why")).toBe("none");
  });

  it("a logarithm stands beside what it stands for: e^1.85 is 6.4 times", () => {
    const { evidence } = proved.verdict;
    expect(row(proved, "The films fit better, by")).toContain(`(ln ${evidence.logBayesFactor.toFixed(2)})`);
    expect(row(proved, "What this look asks for")).toContain(`(ln ${evidence.limit.toFixed(2)})`);
    expect(row(proved, "What this look asks for")).toContain(`${Math.exp(evidence.limit).toFixed(1)} times`);
  });

  it("the noise by name and date, the reader’s error, the band, the policy", () => {
    expect(row(proved, "Noise models of the looks")).toMatch(
      /^setup-tilt\/iron#2, learned from 41 tracks up to .*3 May 2026/,
    );
    expect(row(proved, "Sd of the reader")).toBe("1.00° a reading, 1.50° between readers; customary, not measured yet");
    expect(row(proved, "Goal band")).toMatch(/^−5 to 5/);
    expect(row(proved, "Policy version")).toBe(POLICY.version);
  });

  it("a look a row, the latest first; proved but not listed is said so", () => {
    const { looks } = part(proved);
    expect(looks?.rows).toHaveLength(20);
    expect(looks?.rows[0]?.cells[3]).toMatch(/^Real/);
    expect(part(source([...flat(12, 0), ...flat(8, 20)], [], false)).looks?.rows[0]?.cells[3]).toBe(
      "Proved for this track alone",
    );
  });

  it("the way in sentences ends in what is said", () => {
    expect(part(proved).steps.at(-1)).toMatch(/stands on the roster’s list/);
    expect(part(source([...flat(12, 0), ...flat(8, 20)], [], false)).steps.at(-1)).toMatch(
      /isn’t on the roster’s list yet/,
    );
    expect(part(source(flat(6, 0))).steps.at(-1)).toMatch(/not settled|holding/);
    const few = part(source(flat(2, 0)));
    expect(few.steps.at(-1)).toBe("The first look takes 4 sessions; so far 2 count, so nothing is claimed.");
  });

  it("three files lead an outsider to the same; nothing known of the judging, nothing told", () => {
    expect(part(proved).links.map(({ href }) => href)).toEqual(
      ["verdict", "tracks", "noise"].map((name) => `/api/students/s/setup-tilt/judged?club=iron&part=${name}`),
    );
    const { figures: _, ...untold } = proved;
    expect(buildFigures(words, untold)).toBeNull();
  });
});
