import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Archive } from "@/lib/domain/archive";
import { countKey } from "@/lib/domain/count-key";
import { filmPlanText } from "@/lib/domain/film-plan";
import { selectArchiveRules } from "@/lib/domain/select-archive-rules";
import { anyArchive } from "../ingest/made-archive";

const SEED = 20261128;

/** An academy of which one student is taken out, and rules that name the others. */
const shared = anyArchive
  .filter(({ students }) => students.length > 1)
  .map((archive): Archive => {
    const [first, other] = archive.students;
    const [band] = archive.rules.goalBands;
    if (!first || !other || !band) throw new Error("nothing made");
    const grouping = JSON.stringify([]);
    const at = first.createdAt;
    const row = { kind: "rename" as const, fromGroups: "", toGroups: "", day: "2026-01-01", grouping, recordedAt: at };
    return {
      ...archive,
      rules: {
        ...archive.rules,
        goalBands: [
          band,
          { ...band, id: "g-mine", scope: "student", studentId: first.id },
          { ...band, id: "g-other", scope: "student", studentId: other.id, reason: "secret of the other" },
        ],
        drills: [
          ...archive.rules.drills.map((drill) => ({ ...drill, id: "d2", name: "other's" })),
          ...archive.rules.drills,
        ],
        clubGroups: [1, 2].map((number) => ({ ...row, number, sessions: 9, who: "Ann", why: "for the other one" })),
        noteCodings: [
          { phrase: "never said by anyone here", coding: "{}", who: "Ann", recordedAt: at },
          { phrase: "CLIPPED  it", coding: "{}", who: "Ann", recordedAt: at },
          ...[first, other].flatMap(({ sessions }, which) =>
            sessions.slice(0, 1).map(({ id }) => ({
              phrase: countKey({
                scope: "note",
                sessionId: `${id}${which === 1 ? "-of-other" : ""}`,
                place: "1 2 thin",
              }),
              coding: "{}",
              who: "Ann",
              recordedAt: at,
            })),
          ),
        ],
      },
      students: [
        { ...first, sessions: first.sessions.map((session) => ({ ...session, note: "then clipped it twice" })) },
        other,
      ],
    };
  });

describe("the rules that one student's archive holds", () => {
  it(`200 academies (seed ${SEED}): own bands and everybody's, drills that were given, the groups as they are now without why`, () => {
    fc.assert(
      fc.property(shared, ({ rules, students }) => {
        const mine = selectArchiveRules(rules, students.slice(0, 1));
        expect(mine.goalBands.map(({ id }) => id)).toEqual(["g1", "g-mine"]);
        expect(mine.drills.map(({ id }) => id)).toEqual(["d1"]);
        expect(mine.clubGroups).toMatchObject([{ number: 2, who: "", why: "", sessions: 0 }]);
        expect(JSON.stringify(mine)).not.toMatch(/secret of the other|for the other one|never said by anyone/);
        const looked = students[0]?.sessions.some(({ looks }) => looks.length > 0) ?? false;
        expect(mine.noiseModels).toHaveLength(looked ? 1 : 0);
        expect(mine.noteCodings.map(({ phrase }) => phrase)).toEqual([
          ...(students[0]?.sessions.length ? ["CLIPPED  it"] : []),
          ...(students[0]?.sessions.slice(0, 1) ?? []).map(({ id }) => `@${encodeURIComponent(id)} 1 2 thin`),
        ]);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("an own fundamental that a film plan alone names comes along", () => {
    const bare = fc
      .sample(shared, { seed: SEED, numRuns: 60 })
      .filter(({ students }) => !JSON.stringify(students[0]).includes('"own-heel"'));
    expect(bare.length).toBeGreaterThan(0);
    for (const { rules, students } of bare.slice(0, 3)) {
      const [first] = students;
      if (!first) throw new Error("nothing made");
      const body = filmPlanText({ fundamentals: [{ id: "own-heel", swings: 3 }], views: ["face-on"], care: [] });
      const planned = { ...first, filmPlans: first.filmPlans.map((told) => ({ ...told, body })) };
      expect(selectArchiveRules(rules, [planned]).ownFundamentals.map(({ id }) => id)).toEqual(["own-heel"]);
    }
  });

  it("an own fundamental comes along only where something of the student names it", () => {
    const made = fc.sample(shared, { seed: SEED, numRuns: 60 });
    const held = made.map(({ rules, students }) => ({
      named: JSON.stringify(students[0]).includes('"own-heel"'),
      taken: selectArchiveRules(rules, students.slice(0, 1)).ownFundamentals.length === 1,
    }));
    expect(held.some(({ named }) => named) && held.some(({ named }) => !named)).toBe(true);
    // A camera sd that is stated for it names it as well, and needs no definition to be kept.
    for (const { named, taken } of held) if (taken) expect(named).toBe(true);
  });
});
