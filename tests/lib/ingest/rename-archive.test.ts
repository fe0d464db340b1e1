import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { filmPlanText } from "@/lib/domain/film-plan";
import { renameArchive } from "@/lib/ingest/rename-archive";
import { anyArchive } from "./made-archive";

const none = { fundamentals: new Map(), drills: new Map(), groups: new Map() };

describe("renameArchive", () => {
  it("without names changes nothing (60 generated archives, seed 8)", () => {
    fc.assert(
      fc.property(anyArchive, (archive) => {
        expect(renameArchive(archive, none)).toEqual(archive);
      }),
      { seed: 8, numRuns: 60 },
    );
  });

  it("names everything anew wherever it stands, and back again gives the archive (60, seed 9)", () => {
    const to = { ...none, fundamentals: new Map([["hinge", "own-turn"]]), drills: new Map([["d1", "d9"]]) };
    const back = { ...none, fundamentals: new Map([["own-turn", "hinge"]]), drills: new Map([["d9", "d1"]]) };
    fc.assert(
      fc.property(anyArchive, (archive) => {
        const renamed = renameArchive(archive, to);
        const { drills: _library, noiseModels, ...rules } = renamed.rules;
        expect(noiseModels.map(({ pool }) => pool)).toEqual(["own-turn/iron"]);
        expect(JSON.stringify([rules, renamed.students])).not.toMatch(/"(fundamentalId|rebaselines|after)":"hinge"/);
        expect(JSON.stringify(renamed.students)).not.toContain('"drillId":"d1"');
        expect(renameArchive(renamed, back)).toEqual(archive);
      }),
      { seed: 9, numRuns: 60 },
    );
  });

  it("names the fundamentals of a film plan anew, keeps their swings, and leaves a plan that can't be read", () => {
    const [archive] = fc.sample(anyArchive, { seed: 5, numRuns: 40 }).filter(({ students }) => students.length > 0);
    const [student] = archive?.students ?? [];
    const [told] = student?.filmPlans ?? [];
    if (!archive || !student || !told) throw new Error("no archive with a plan");
    const planOf = (...ids: readonly string[]): string =>
      filmPlanText({ fundamentals: ids.map((id, at) => ({ id, swings: 5 - at })), views: ["face-on"], care: [] });
    const filmPlans = [planOf("hinge", "hip-sway"), planOf("hip-sway"), "{}"].map((body) => ({ ...told, body }));
    const to = { ...none, fundamentals: new Map([["hinge", "own-turn"]]) };
    const renamed = renameArchive({ ...archive, students: [{ ...student, filmPlans }] }, to);
    expect(renamed.students[0]?.filmPlans.map(({ body }) => body)).toEqual([
      ...[planOf("own-turn", "hip-sway"), planOf("hip-sway"), "{}"],
    ]);
  });

  it("sends club groups where they were said to go", () => {
    const [archive] = fc
      .sample(anyArchive, { seed: 5, numRuns: 40 })
      .filter(({ students }) => (students[0]?.sessions.length ?? 0) > 0);
    if (!archive) throw new Error("no archive with a session");
    const moved = renameArchive(archive, { ...none, groups: new Map([["iron", "wood"]]) });
    expect(moved.students.flatMap(({ sessions }) => sessions.map(({ saidClubGroup }) => saidClubGroup))).not.toContain(
      "iron",
    );
    expect(moved.rules.noiseModels.map(({ pool, name }) => [pool, name])).toEqual([["hinge/wood", "hinge/iron#1"]]);
    const [model] = archive.rules.noiseModels;
    if (!model) throw new Error("no model");
    const wood = { ...model, pool: "hinge/wood", name: "hinge/wood#1" };
    const both = { ...archive, rules: { ...archive.rules, noiseModels: [wood, model, { ...wood, number: 2 }] } };
    const one = renameArchive(both, { ...none, groups: new Map([["iron", "wood"]]) }).rules.noiseModels;
    expect(one.map(({ pool, name, number }) => [pool, name, number])).toEqual([
      ["hinge/wood", "hinge/wood#1", 1],
      ["hinge/wood", "hinge/wood#1", 2],
    ]);
    expect(moved.rules.goalBands.map(({ clubGroup }) => clubGroup)).not.toContain("iron");
  });
});
