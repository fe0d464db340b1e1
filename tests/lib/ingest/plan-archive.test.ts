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
  owningRules: [],
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
  sessions: [],
  others: 0,
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

  it("an empty academy that takes its groups over is asked all the same what its own fundamental is", () => {
    const [own] = archive.rules.ownFundamentals;
    if (!own) throw new Error("no own fundamental");
    const regrouped = {
      ...{ number: 1, kind: "arrange" as const, fromGroups: "", toGroups: "", sessions: 0, day: "2026-01-01" },
      ...{ who: "Far", why: "ours", grouping: JSON.stringify(SHORT_LIST), recordedAt: "2026-01-01T10:00:00.000Z" },
    } as const;
    const brought = { ...archive, rules: { ...archive.rules, clubGroups: [regrouped] } };
    const definition = JSON.stringify({ ...JSON.parse(own.definition), readerSd: 9 });
    const here = { ...empty, rules: { ...empty.rules, ownFundamentals: [{ ...own, definition }] } };
    const asked = planArchive(brought, here, source, new Map());
    expect(asked.questions.map(({ code }) => code)).toEqual(["fundamental-differs"]);
    expect(asked.plan).toBeNull();
    const apart = planArchive(brought, here, source, new Map([[asked.questions[0]?.name ?? "", "apart"]])).plan;
    expect(apart?.rules.clubGroups).toEqual([regrouped]);
    expect(apart?.rules.ownFundamentals.map(({ id }) => id)).toEqual([`${own.id}-2`]);
    expect(planArchive(brought, empty, source, new Map()).questions).toEqual([]);
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

  it("the very student on file is refused", () => {
    const here = { ...empty, students: [{ id: first.id, alias: "someone" }] };
    expect(codes(planArchive(archive, here, source, new Map()).refusals)).toEqual(["student-here"]);
  });

  it("an academy whose students the importer may not see is not empty: it keeps its own rules", () => {
    const { plan } = planArchive(archive, { ...empty, others: 3 }, source, new Map());
    expect([plan?.among, plan?.seasonStart, plan?.rules.noiseModels]).toEqual(["others", null, []]);
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
    expect(codes(differences)).toEqual([
      "season",
      "goal-bands",
      "owning-rules",
      "note-codings",
      "consents",
      "looks",
      "roster-list",
    ]);
    expect(plan?.students.flatMap(({ sessions }) => sessions.flatMap(({ looks }) => looks))).toEqual([]);
    expect(plan?.rules.noiseModels).toEqual([]);
    expect(plan?.seasonStart).toBeNull();
    const same = { ...here, rules: { ...here.rules, noiseModels: [model] } };
    expect(codes(planArchive(archive, same, source, new Map()).differences)).toContain("looks");
    const named = planArchive({ ...archive, saidBy: "Range" }, same, source, new Map());
    // The name is only a word in the file: consent is asked for anew all the same.
    const kept = archive.students.flatMap(({ consents }) => consents).length;
    expect(kept).toBeGreaterThan(0);
    expect(named.differences).toContainEqual({ code: "consents", args: { count: kept } });
  });

  it("looks are ours where sessions of the archive are on file here, never by a name or a start model", () => {
    const [start] = archive.rules.noiseModels;
    if (!start) throw new Error("no model");
    const learned = { ...start, body: JSON.stringify({ ...JSON.parse(start.body), kind: "learned" }) };
    const withModel = (model: typeof start, sessions: readonly string[]) => {
      const rules = { ...archive.rules, noiseModels: [model] };
      const students = [{ id: "other", alias: "Other" }];
      const here = { ...empty, students, sessions, rules: { ...empty.rules, noiseModels: [model] } };
      return codes(planArchive({ ...archive, saidBy: "Range", rules }, here, source, new Map()).differences);
    };
    const known = [archive.students.flatMap(({ sessions }) => sessions)[0]?.id ?? ""];
    expect(withModel(learned, [])).toContain("looks");
    expect(withModel(start, known)).toContain("looks");
    expect(withModel(learned, known)).not.toContain("looks");
  });
});
