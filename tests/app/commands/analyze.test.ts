import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { LookVerdict, TrackVerdict } from "@/lib/domain/track-verdict";
import { POLICY, POLICY_VERSION } from "@/lib/verdict/policy";
import { builtScript } from "../../built-script";
import { flat, madeTrack } from "../../lib/verdict/made-track";

/** A verdict or an error, and what the list says; the tests look at what is there. */
type Line = Omit<TrackVerdict, "looks"> & {
  readonly line: number;
  readonly error: { readonly field: string; readonly message: string };
  readonly looks: readonly LookVerdict[];
};

interface Run {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
  readonly lines: readonly Line[];
}

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), "analyze-test-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function kept(name: string, lines: readonly unknown[]): string {
  const file = path.join(folder, name);
  writeFileSync(file, lines.map((line) => (typeof line === "string" ? line : JSON.stringify(line))).join("\n"));
  return file;
}

/** Runs the command as a process, as a script would. */
function analyze(args: readonly string[], input: readonly unknown[]): Promise<Run> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [builtScript("app/_commands/analyze.ts"), ...args]);
    let out = "";
    let err = "";
    child.stdout.on("data", (part) => {
      out += part;
    });
    child.stderr.on("data", (part) => {
      err += part;
    });
    child.on("error", reject);
    child.on("close", (status) => {
      const lines = out.split("\n").filter((line) => line !== "");
      resolve({ status, out, err, lines: lines.map((line) => JSON.parse(line)) });
    });
    // A command that refuses its arguments reads nothing.
    child.stdin.on("error", () => {});
    child.stdin.end(input.map((line) => (typeof line === "string" ? line : JSON.stringify(line))).join("\n"));
  });
}

const step = [...flat(8, 0), ...flat(10, 12)];
const roster: readonly JudgedTrack[] = Array.from({ length: 12 }, (_, i) =>
  madeTrack(50 + i, i < 3 ? step : flat(18, 0), { id: `t${i}`, goal: { low: 9, high: 15 }, better: undefined }),
);

describe("analyze: a published series", () => {
  it("Nile flow at Aswan 1871-1970 (Cobb 1978, Biometrika 65): a fall, proved, not before 1899, sets hold 1899", async () => {
    const { cases } = JSON.parse(readFileSync("tests/reference/03c_trend.json", "utf8"));
    const flow: number[] = cases.find((one: { id: string }) => one.id === "nile_mk").input.y;
    const sessions = flow.map((value, i) => ({ date: `${1871 + i}-01-01`, captureSd: 0, swings: [value] }));
    const run = await analyze(["--no-roster", "--looks"], [{ id: "nile", better: "down", sessions }]);
    expect(run.status).toBe(0);
    const verdict = run.lines[0] as Line;
    expect(verdict).toMatchObject({ verdict: "gain", assumed: null, noiseModel: "start", sessions: 100, swings: 100 });
    expect(verdict.changes[0]?.set80).toContain(28);
    expect(verdict.changes[0]?.set95).toContain(28);
    expect(verdict.changes[0]?.size.high95).toBeLessThan(0);
    expect(verdict.evidence.limit).toBeCloseTo(3.65, 12);
    const proved = verdict.looks.find((look) => look.verdict === "gain" || look.verdict === "slip")?.date ?? "";
    expect(proved >= "1899-01-01").toBe(true);
    expect(proved <= "1915-01-01").toBe(true);
  });
});

describe("analyze: what it learns from", () => {
  it("its own tracks, another file's, none, or a file of models; every line keeps its place and id", async () => {
    const [own, other, none] = await Promise.all([
      analyze([], roster),
      analyze(["--roster", kept("roster.ndjson", roster)], roster.slice(0, 2)),
      analyze(["--no-roster"], roster.slice(0, 2)),
    ]);
    expect([own.status, other.status, none.status]).toEqual([0, 0, 0]);
    expect(own.lines.map((line) => line.id)).toEqual(roster.map((track) => track.id));
    expect(own.lines[0]?.noiseModel).toBe("learned-from-12");
    expect(other.lines).toEqual(own.lines.slice(0, 2));
    expect(none.lines[0]?.noiseModel).toBe("start");
    expect(own.lines[0]).toMatchObject({ verdict: "gain", moved: null });
    expect(own.lines[0]).not.toHaveProperty("looks");
    expect(own.lines[0]).not.toHaveProperty("listed");
  });

  it("a pool by itself: eleven tracks of one pool teach nothing to a track of another", async () => {
    const pooled = roster.map((track, i) => ({ ...track, pool: i === 0 ? "b" : "a" }));
    const run = await analyze([], pooled);
    expect(run.lines.map((line) => line.noiseModel)).toEqual(["start", ...Array(11).fill("learned-from-11")]);
  });

  it("models of a file: the newest of the pool, or the one that the last session names; an unknown name is a bad line", async () => {
    const model = (name: string, priorChange: number) => ({
      noiseModel: name,
      kind: "learned",
      cells: [{ daySd: 1, correlation: 0.1, weight: 1 }],
      replicateSd: 2,
      priorChange,
      learnedFrom: 10,
    });
    const file = kept("noise.ndjson", [model("old", 0.1), model("new", 0.3)]);
    const naming = (name: string) => {
      const track = roster[0] as JudgedTrack;
      return { ...track, id: name, sessions: track.sessions.map((one) => ({ ...one, noiseModel: name })) };
    };
    const run = await analyze(["--noise", file], [roster[0], naming("old"), naming("lost")]);
    expect(run.status).toBe(1);
    expect(run.lines[0]).toMatchObject({ noiseModel: "new", evidence: { priorChange: 0.3 } });
    expect(run.lines[1]).toMatchObject({ noiseModel: "old", evidence: { priorChange: 0.1 } });
    expect(run.lines[2]).toMatchObject({ id: "lost", line: 3, error: { field: "sessions[0].noiseModel" } });
  });
});

describe("analyze: the same input, the same words", () => {
  it("the same bytes twice, whatever the order of each track's sessions, and a prefix says the same at its looks", async () => {
    const turned = roster.map((track) => ({ ...track, sessions: [...track.sessions].reverse() }));
    const shorter = roster.map((track) => ({ ...track, sessions: track.sessions.slice(0, 12) }));
    const file = kept("learned.ndjson", roster);
    const [first, again, reversed, prefix] = await Promise.all([
      analyze(["--roster", file, "--looks"], roster),
      analyze(["--roster", file, "--looks"], roster),
      analyze(["--roster", file, "--looks"], turned),
      analyze(["--roster", file, "--looks"], shorter),
    ]);
    expect(again.out).toBe(first.out);
    expect(reversed.out).toBe(first.out);
    prefix.lines.forEach((line, t) => {
      const whole = first.lines[t] as Line;
      expect(line.looks).toEqual(whole.looks.slice(0, 12));
      expect(line.verdict).toBe(whole.looks[11]?.verdict);
    });
  });

  it("with a list: listed on the track and on each look, and said is open where a word isn't listed", async () => {
    const [listed, strict] = await Promise.all([
      analyze(["--list", "0.05", "--looks"], roster),
      analyze(["--list", "0.000000000000001"], roster),
    ]);
    expect(listed.lines[0]).toMatchObject({ verdict: "gain", listed: true, said: "gain" });
    expect(listed.lines[11]?.listed).toBe(false);
    expect(listed.lines[11]?.said).toBe(listed.lines[11]?.verdict);
    for (const line of listed.lines) {
      expect(line.looks.at(-1)?.listed).toBe(line.listed);
      for (const look of line.looks) if (look.listed) expect(["gain", "slip"]).toContain(look.verdict);
    }
    expect(strict.lines[0]).toMatchObject({ verdict: "gain", listed: false, said: "open" });
  });

  it("a replaced threshold shows in the version and in the words", async () => {
    const run = await analyze(["--no-roster", "--policy", "limit=40"], [roster[0]]);
    expect(run.lines[0]).toMatchObject({
      policyVersion: `${POLICY_VERSION}+limit=40`,
      verdict: "open",
      evidence: { limit: 40 + POLICY.limitAlone },
    });
  });
});

describe("analyze: bad input", () => {
  it("a bad line is answered in its place, the others still run, and the status is 1", async () => {
    const good = roster[0] as JudgedTrack;
    const empty = { id: "empty", sessions: [] };
    const badDate = { id: "d", sessions: [{ date: "2026-02-30", captureSd: 0, swings: [1] }] };
    const run = await analyze(["--no-roster", "--list", "0.05"], [good, "no json", badDate, empty]);
    expect(run.status).toBe(1);
    expect(run.lines.map((line) => line.id)).toEqual(["t0", null, "d", "empty"]);
    expect(run.lines[0]?.verdict).toBe("gain");
    expect(run.lines[1]).toMatchObject({ line: 2, error: { field: "" } });
    expect(run.lines[2]).toMatchObject({ line: 3, error: { field: "sessions[0].date" } });
    expect(run.lines[2]?.error.message).toContain("2026-02-30");
    expect(run.lines[3]).toMatchObject({
      verdict: "open",
      evidence: { logBayesFactor: 0, directionUp: 0.5 },
      said: "open",
    });
    expect(run.err).toBe("");
  });

  it("no line at all is no error", async () => {
    expect(await analyze([], [])).toMatchObject({ status: 0, out: "", err: "" });
  });

  it("unusable arguments: status 2, one sentence on standard error, nothing written", async () => {
    const runs = await Promise.all(
      [
        ["--list", "1"],
        ["--list"],
        ["--unknown"],
        ["--policy", "limit=high"],
        ["--policy", "nobody=3"],
        ["--no-roster", "--roster", "x"],
        ["--roster", path.join(folder, "nowhere.ndjson")],
        ["--noise", kept("bad-noise.ndjson", ["{}"])],
      ].map((args) => analyze(args, [])),
    );
    for (const run of runs) {
      expect(run.status).toBe(2);
      expect(run.out).toBe("");
      expect(run.err.trim()).toMatch(/^\S.*\.$/);
      expect(run.err).not.toContain(" at ");
    }
  });
});
