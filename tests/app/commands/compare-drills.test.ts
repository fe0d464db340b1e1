import { spawn } from "node:child_process";
import { describe, expect, it } from "vitest";
import { compareDrills } from "@/lib/drills/compare-drills";
import type { Comparison } from "@/lib/drills/comparison";
import { POLICY, POLICY_VERSION } from "@/lib/verdict/policy";
import { drawAcademy } from "@/tests/calibration/drills-population";
import { repeatedPeople, repeatedTrial } from "@/tests/lib/drills/repeated-people";
import { expectNear } from "@/tests/reference/read-reference";
import { builtScript } from "../../built-script";

type Written = Omit<Comparison, "caveats" | "reference"> & {
  readonly policyVersion: string;
  readonly tracks: number;
  readonly unit: string | null;
  readonly reference: { readonly none?: string; readonly students?: number };
  readonly caveats: readonly string[];
  readonly errors: readonly {
    readonly id: string | null;
    readonly line: number;
    readonly error: { readonly field: string; readonly message: string };
  }[];
};

interface Run {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the command as a process, as a script would. */
function compare(args: readonly string[], input: readonly unknown[]): Promise<Run> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [builtScript("app/_commands/compare-drills.ts"), ...args]);
    let out = "";
    let err = "";
    child.stdout.on("data", (part) => {
      out += part;
    });
    child.stderr.on("data", (part) => {
      err += part;
    });
    child.on("error", reject);
    child.on("close", (status) => resolve({ status, out, err }));
    // A command that refuses its arguments reads nothing.
    child.stdin.on("error", () => {});
    child.stdin.end(input.map((line) => (typeof line === "string" ? line : JSON.stringify(line))).join("\n"));
  });
}

const read = (run: Run): Written => JSON.parse(run.out);
const academy = drawAcademy(
  {
    ...{ name: "door", students: 160, effects: [0.8, 0, 0, 0, 0, 0, 0, 0], naturalRate: 0.04, leastDrilled: 0.5 },
    ...{ waiting: "marked", effectSpread: 0, hiddenChoice: "none" },
  },
  99,
).map((track) => ({ ...track, unit: "deg" }));

describe("compare-drills", () => {
  it("writes one object, the same that lib says, byte for byte at every call", async () => {
    const [run, again] = await Promise.all([compare([], academy), compare([], academy)]);
    expect(run.status).toBe(0);
    expect(run.err).toBe("");
    expect(again.out).toBe(run.out);
    expect(run.out.trimEnd().split("\n")).toHaveLength(1);
    const found = read(run);
    const expected = compareDrills(academy, POLICY);
    expect(found).toMatchObject({ policyVersion: POLICY_VERSION, tracks: 160, unit: "deg", errors: [] });
    expect(found.drills).toEqual(JSON.parse(JSON.stringify(expected.drills)));
    expect(found.sensitivity).toEqual(JSON.parse(JSON.stringify(expected.sensitivity)));
    expect(found.drills.map(({ students }) => students)).toEqual(
      found.drills.map(({ students }) => students).toSorted((a, b) => b - a),
    );
  });

  it("of an open trial with repeated measures it says what lib says and R works out (tests/reference/12_repeated_bdi.json)", async () => {
    const { trial, figures } = repeatedTrial();
    const people = repeatedPeople(trial);
    const run = await compare([], people);
    expect([run.status, run.err]).toEqual([0, ""]);
    const found = read(run);
    const { reference, caveats, ...expected } = compareDrills(people, POLICY);
    expect(found).toMatchObject(JSON.parse(JSON.stringify({ tracks: 100, unit: "points", errors: [], ...expected })));
    expect(found.reference).toEqual(JSON.parse(JSON.stringify(reference)));
    expect(found.caveats).toHaveLength(caveats.length);
    for (const kind of ["effect", "retained"] as const)
      for (const end of ["estimate", "low95", "high95"] as const)
        expectNear(found.drills[0]?.[kind]?.[end] ?? Number.NaN, figures[kind][end], { rel: 1e-8 }, `${kind}.${end}`);
  });

  it("labels before and after as what not to believe, and says cautions in sentences", async () => {
    const found = read(await compare([], academy));
    for (const one of found.beforeAfter) expect((one as { label?: string }).label).toMatch(/^Don’t believe/);
    expect(found.caveats.length).toBeGreaterThan(0);
    for (const sentence of found.caveats) expect(sentence).toMatch(/^[A-Z0-9].*\.$/);
  });

  it("a bad line is named with its number, id and field; the others still run, and the status is 1", async () => {
    const [first, ...rest] = academy;
    const bad = [
      { ...first, id: "no-coach", coach: undefined },
      "{",
      { ...first, id: "hand", handedness: "both" },
      { ...first, id: "backwards", drills: [{ drill: "d", start: "2026-03-02", end: "2026-03-01" }] },
      { ...first, id: "no-day", waiting: [{ from: "2026-02-30", to: "2026-03-01" }] },
      { ...first, id: "inches", unit: "in" },
      { ...first, id: "coin", drills: [{ drill: "d", start: "2026-03-02", assigned: "coin" }] },
    ];
    const run = await compare([], [first, "", ...bad, ...rest]);
    expect(run.status).toBe(1);
    const found = read(run);
    expect(found.tracks).toBe(160);
    expect(found.drills).toEqual(read(await compare([], academy)).drills);
    expect(found.errors.map(({ id, line, error }) => [id, line, error.field])).toEqual([
      ["no-coach", 3, "coach"],
      [null, 4, ""],
      ["hand", 5, "handedness"],
      ["backwards", 6, "drills[0].end"],
      ["no-day", 7, "waiting[0].from"],
      ["inches", 8, "unit"],
      ["coin", 9, "drills[0].assigned"],
    ]);
    for (const { error } of found.errors) expect(error.message).toMatch(/\.$/);
  });

  it("nobody without a drill: says why there is no reference; no line at all is an answer too", async () => {
    const run = await compare(
      [],
      academy.filter(({ drills }) => drills.length > 0),
    );
    expect(read(run).reference.none).toMatch(/8 are needed/);
    const nothing = await compare([], []);
    expect(nothing.status).toBe(0);
    expect(read(nothing)).toMatchObject({ tracks: 0, unit: null, drills: [], beforeAfter: [], sensitivity: [] });
  });

  it("a policy's threshold changes what is ruled out, and the version says so", async () => {
    const run = await compare(["--policy", "smallestWorthwhile=0.01"], academy);
    const found = read(run);
    expect(found.policyVersion).toBe(`${POLICY_VERSION}+smallestWorthwhile=0.01`);
    expect(found.drills.filter(({ says }) => says === "no-better")).toEqual([]);
    expect(read(await compare([], academy)).drills.filter(({ says }) => says === "no-better")).not.toEqual([]);
  });

  it("so does a threshold of the comparison itself: with more waiters asked for than there are, drills stand against each other", async () => {
    const found = read(await compare(["--policy", "waiters=500"], academy));
    expect(found.policyVersion).toBe(`${POLICY_VERSION}+waiters=500`);
    expect(found.reference.none).toMatch(/500 are needed/);
    expect(found.drills.every(({ against }) => against === "other-drills")).toBe(true);
  });

  it.each([
    [["--nonsense"], "--nonsense"],
    [["--policy"], "--policy"],
    [["--policy", "nothing=1"], "nothing"],
    [["--policy", "smallestWorthwhile=-1"], "smallestWorthwhile"],
    [["--policy", "waiters=1"], "waiters"],
  ])("unusable arguments %j exit with 2 and a sentence", async (args, named) => {
    const run = await compare(args, academy);
    expect([run.status, run.out]).toEqual([2, ""]);
    expect(run.err).toContain(named);
  });
});
