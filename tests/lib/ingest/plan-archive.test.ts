import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Archive } from "@/lib/domain/archive";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import { type AcademyOnFile, aliasAnswer, planArchive } from "@/lib/ingest/plan-archive";
import { anyArchive } from "./made-archive";

const [archive] = fc
  .sample(anyArchive, { seed: 5, numRuns: 40 })
  .filter(({ students }) => (students[0]?.sessions.length ?? 0) > 0) as [Archive];
const first = archive.students[0] as Archive["students"][number];
const source = { fileName: "x.zip", contentHash: "h" };
const none = {
  ownFundamentals: [],
  clubGroups: [],
  drills: [],
  goalBands: [],
  noiseModels: [],
  readerErrors: [],
  noteCodings: [],
};
const empty: AcademyOnFile = {
  students: [],
  rules: { zone: "UTC", locale: "en", seasonStart: SINCE_EVER, ...none },
  grouping: SHORT_LIST,
};
const codes = (notes: readonly { readonly code: string }[]) => notes.map((note) => note.code);

describe("an archive against an academy", () => {
  it("an empty academy takes everything over, season and all, and nothing differs", () => {
    const { plan, refusals, differences, aliases } = planArchive(archive, empty, source, new Map());
    expect([refusals, differences, aliases]).toEqual([[], [], []]);
    expect(plan?.seasonStart).toBe(archive.rules.seasonStart);
    expect(plan?.students).toEqual(archive.students);
    expect(plan?.rules.noiseModels).toEqual(archive.rules.noiseModels);
  });

  it("an alias that is taken asks for another one; a free one is taken, a taken or empty one asks again", () => {
    const here = { ...empty, students: [{ id: "other", alias: first.alias }] };
    const asked = planArchive(archive, here, source, new Map());
    expect(asked.plan).toBeNull();
    expect(asked.aliases).toEqual([{ studentId: first.id, alias: first.alias, answer: "" }]);
    const answer = (alias: string) =>
      planArchive(archive, here, source, new Map([[aliasAnswer(first.id), alias]])).plan;
    expect(answer(" Free name ")?.students[0]?.alias).toBe("Free name");
    for (const bad of [first.alias, " ", "x".repeat(61), "a\u202Eb"]) expect(answer(bad)).toBeNull();
  });

  it("the very student on file, another definition of the own fundamental, and an unknown club group are refused", () => {
    const here = { ...empty, students: [{ id: first.id, alias: "someone" }] };
    expect(codes(planArchive(archive, here, source, new Map()).refusals)).toEqual(["student-here"]);
    const [own] = archive.rules.ownFundamentals;
    const other = { ...empty.rules, ownFundamentals: own ? [{ ...own, definition: "{}" }] : [] };
    const refused = planArchive(archive, { ...empty, rules: other }, source, new Map());
    expect([codes(refused.refusals), refused.plan]).toEqual([["fundamental-differs"], null]);
    const without = { ...empty, grouping: SHORT_LIST.filter((group) => group.id !== "iron") };
    expect(codes(planArchive(archive, without, source, new Map()).refusals)).toEqual(["group-unknown"]);
  });

  it("an academy with students keeps its rules: looks of a noise model that is another one here lose it, and it is said", () => {
    const [model] = archive.rules.noiseModels;
    if (!model) throw new Error("no model");
    const here = {
      ...empty,
      students: [{ id: "other", alias: "Other" }],
      rules: { ...empty.rules, seasonStart: "2020-01-01", noiseModels: [{ ...model, body: '{"another":1}' }] },
    };
    const { plan, differences } = planArchive(archive, here, source, new Map());
    expect(codes(differences)).toEqual(["season", "goal-bands", "note-codings", "looks", "roster-list"]);
    expect(plan?.students.flatMap(({ sessions }) => sessions.flatMap(({ looks }) => looks))).toEqual([]);
    expect(plan?.rules.noiseModels).toEqual([]);
    expect(plan?.seasonStart).toBeNull();
    const same = { ...here, rules: { ...here.rules, noiseModels: [model] } };
    expect(codes(planArchive(archive, same, source, new Map()).differences)).not.toContain("looks");
  });
});
