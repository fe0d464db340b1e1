import { describe, expect, it } from "vitest";
import type { Archive } from "@/lib/domain/archive";
import { carriedText } from "@/lib/domain/carried-look";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import { APART, type CatalogueHere, mapArchive } from "@/lib/ingest/map-archive";
import { oneStudent, SAID } from "./carried-archive";
import { OWN_HEEL } from "./made-archive";

const createdAt = "2026-05-04T18:00:00.000Z";
const NO_DOSE = {
  dose: "",
  reps: null,
  minutesADay: null,
  daysAWeek: null,
  remeasureDays: null,
  retiredOn: null,
  earlier: "[]",
};
const ASKED_NOTHING = {
  reps: null,
  minutesADay: null,
  daysAWeek: null,
  stopRule: "",
  remeasureOn: null,
  decisions: [],
};
const heel = (more: object = {}) =>
  ({ id: "own-heel", definition: JSON.stringify({ ...OWN_HEEL, ...more }), createdAt }) as const;
const drill = { id: "d1", name: "Freeze", fundamentalId: "hinge", how: "Stop.", cautions: "", ...NO_DOSE } as const;

function archive(rules: Partial<Archive["rules"]> = {}): Archive {
  const made = oneStudent({ carried: [carriedText(SAID)] });
  const [student] = made.students;
  if (!student) throw new Error("nobody");
  const reading = {
    ...({ fundamentalId: "own-heel", reader: "Far", reread: 0, value: 3, typed: "3", unit: "deg" } as const),
    ...({ signRule: "neutral", enteredAt: createdAt, corrections: [] } as const),
  };
  const sessions = student.sessions.map((session) => ({
    ...session,
    swings: [{ number: 1, note: null, readings: [{ ...reading, corrections: [] }] }],
  }));
  const given = { id: "g1", drillId: "d1", fundamentalId: "hinge", startDay: "2026-05-01", endDay: null } as const;
  const assignments = [
    { ...given, dose: "", who: "", recordedAt: null, endWhy: null, voidedAt: null, ...ASKED_NOTHING },
  ];
  return {
    ...made,
    rules: { ...made.rules, ownFundamentals: [heel()], drills: [drill], ...rules },
    students: [{ ...student, sessions, assignments }],
  };
}

const here = (has: Partial<CatalogueHere["rules"]> = {}, grouping = SHORT_LIST): CatalogueHere => ({
  rules: { ownFundamentals: [], drills: [], ...has },
  grouping,
});

const asked = (made: ReturnType<typeof mapArchive>) =>
  made.questions.map(({ name, code, options }) => [name, code, options.map(({ value }) => value).join(" ")]);

describe("mapArchive", () => {
  it("asks nothing where everything means the same here, or is new", () => {
    const made = archive();
    expect(mapArchive(made, here(), new Map())).toEqual({ archive: made, questions: [], open: 0 });
    const known = here({ ownFundamentals: [heel()], drills: [drill] });
    expect(mapArchive(made, known, new Map()).questions).toEqual([]);
  });

  it("asks about an own fundamental of another definition; apart it gets another id and name, ours it takes ours", () => {
    const ours = here({ ownFundamentals: [heel({ readerSd: 9 })] });
    const open = mapArchive(archive(), ours, new Map());
    expect(asked(open)).toEqual([["answer-fundamental:own-heel", "fundamental-differs", "own-heel apart"]]);
    expect(open.open).toBe(1);
    const apart = mapArchive(archive(), ours, new Map([["answer-fundamental:own-heel", APART]])).archive;
    expect(apart.rules.ownFundamentals.map(({ id, definition }) => [id, JSON.parse(definition).ownName])).toEqual([
      ["own-heel-2", "Heel (2)"],
    ]);
    expect(apart.students[0]?.sessions[0]?.swings[0]?.readings[0]?.fundamentalId).toBe("own-heel-2");
    const taken = mapArchive(archive(), ours, new Map([["answer-fundamental:own-heel", "own-heel"]]));
    expect([taken.open, taken.archive.rules.ownFundamentals]).toEqual([0, []]);
  });

  it("asks about one of the same name under another id, and offers no measure of another kind", () => {
    const twin = { ...heel({ id: "own-foot", ownName: "heel" }), id: "own-foot" } as const;
    expect(asked(mapArchive(archive(), here({ ownFundamentals: [twin] }), new Map()))).toEqual([
      ["answer-fundamental:own-heel", "fundamental-twin", "own-foot apart"],
    ]);
    const answers = new Map([["answer-fundamental:own-heel", "own-foot"]]);
    const taken = mapArchive(archive(), here({ ownFundamentals: [twin] }), answers).archive;
    expect(taken.students[0]?.sessions[0]?.swings[0]?.readings[0]?.fundamentalId).toBe("own-foot");
    const cm = { ...twin, definition: JSON.stringify({ ...OWN_HEEL, id: "own-foot", unit: "pct-stance" }) };
    expect(mapArchive(archive(), here({ ownFundamentals: [cm] }), new Map()).questions[0]?.options).toEqual([
      { value: APART, name: "Heel" },
    ]);
  });

  it("asks about a drill of the same name and other words; ours stands for it, apart it is told apart by its name", () => {
    const ours = here({ drills: [{ ...drill, id: "ours", how: "Stop longer." }] });
    expect(asked(mapArchive(archive(), ours, new Map()))).toEqual([["answer-drill:d1", "drill-differs", "ours apart"]]);
    const taken = mapArchive(archive(), ours, new Map([["answer-drill:d1", "ours"]])).archive;
    expect([taken.rules.drills, taken.students[0]?.assignments[0]?.drillId]).toEqual([[ours.rules.drills[0]], "ours"]);
    const apart = mapArchive(archive(), ours, new Map([["answer-drill:d1", APART]])).archive;
    expect(apart.rules.drills.map(({ id, name }) => [id, name])).toEqual([["d1", "Freeze (2)"]]);
  });

  it("asks about club groups that aren't here or hold other clubs, and takes the answer wherever a group is named", () => {
    const without = SHORT_LIST.filter(({ id }) => id !== "iron");
    const made = mapArchive(archive(), here({}, without), new Map());
    expect(made.questions.map(({ name, code }) => [name, code])).toEqual([["answer-group:iron", "group-unknown"]]);
    const { archive: moved, open } = mapArchive(archive(), here({}, without), new Map([["answer-group:iron", "wood"]]));
    const [session] = moved.students[0]?.sessions ?? [];
    expect([open, session?.saidClubGroup, moved.students[0]?.carried[0]?.clubGroup]).toEqual([0, "wood", "wood"]);
    const renamed = SHORT_LIST.map((group) => (group.id === "iron" ? { ...group, name: "Sticks" } : group));
    expect(mapArchive(archive(), here({}, renamed), new Map()).questions[0]?.code).toBe("group-differs");
  });

  it("offers one of ours for one of theirs alone: what takes it a second time stays open", () => {
    const other = { ...heel({ id: "own-toe", ownName: "HEEL" }), id: "own-toe" } as const;
    const made = archive({ ownFundamentals: [heel(), other] });
    const ours = here({ ownFundamentals: [{ ...heel({ id: "own-foot" }), id: "own-foot" }] });
    const one = ["answer-fundamental:own-heel", "own-foot"] as const;
    const both = mapArchive(made, ours, new Map([one, ["answer-fundamental:own-toe", "own-foot"]]));
    expect([both.open, both.questions[1]?.options.map(({ value }) => value)]).toEqual([1, [APART]]);
    expect(mapArchive(made, ours, new Map([one, ["answer-fundamental:own-toe", APART]])).open).toBe(0);
  });

  it("a drill taken apart never stands under the id of one of ours, so that another may be that one", () => {
    const other = { ...drill, id: "d2" };
    const ours = { ...drill, how: "Stop longer." };
    const [apart, is] = [
      ["answer-drill:d1", APART],
      ["answer-drill:d2", "d1"],
    ] as const;
    const made = mapArchive(archive({ drills: [drill, other] }), here({ drills: [ours] }), new Map([apart, is]));
    expect(made.archive.rules.drills.map(({ id, how }) => [id, how])).toEqual([
      ["d1-2", "Stop."],
      ["d1", "Stop longer."],
    ]);
    expect(made.archive.students[0]?.assignments[0]?.drillId).toBe("d1-2");
  });

  it("numbers sessions of one day anew where two of their groups are one here", () => {
    const made = archive();
    const [student] = made.students;
    const [session] = student?.sessions ?? [];
    if (!student || !session) throw new Error("nobody");
    const film = (id: string, saidClubGroup: "iron" | "hybrid" | "wood", sequence: number) => ({
      ...session,
      ...{ id, saidClubGroup, clubGroup: saidClubGroup, sequence },
    });
    const sessions = [film("a", "iron", 1), film("b", "hybrid", 1), film("c", "wood", 1), film("d", "wood", 2)];
    const all = { ...made, students: [{ ...student, sessions }] };
    const without = SHORT_LIST.filter(({ id }) => id === "wood");
    const answers = new Map([
      ["answer-group:iron", "wood"],
      ["answer-group:hybrid", "wood"],
    ]);
    const { archive: moved, open } = mapArchive(all, here({}, without), answers);
    expect([open, moved.students[0]?.sessions.map(({ id, sequence }) => `${id}${sequence}`)]).toEqual([
      0,
      ["a3", "b4", "c1", "d2"],
    ]);
  });

  it("asks about the club group of a student's goal, where nothing else lies", () => {
    const goal = {
      ...({ id: "g", fundamentalId: "hinge", clubGroup: "hybrid", scope: "student", studentId: "s-far" } as const),
      ...{ ageFrom: null, ageTo: null, low: 1, high: 2, fromDay: "2026-01-01", reason: "", who: "", createdAt },
    };
    const without = SHORT_LIST.filter(({ id }) => id !== "hybrid");
    const made = archive({ goalBands: [goal, { ...goal, id: "all", scope: "academy", studentId: null }] });
    const answers = new Map([["answer-group:hybrid", "iron"]]);
    const { archive: moved, questions } = mapArchive(made, here({}, without), answers);
    expect(questions.map(({ name }) => name)).toEqual(["answer-group:hybrid"]);
    expect(moved.rules.goalBands[0]?.clubGroup).toBe("iron");
    const common = archive({ goalBands: [{ ...goal, scope: "academy", studentId: null }] });
    expect(mapArchive(common, here({}, without), new Map()).questions).toEqual([]);
  });

  it("takes nothing for an answer that isn't offered", () => {
    const ours = here({ ownFundamentals: [heel({ readerSd: 9 })] });
    for (const answer of ["", "own-else", "__proto__", "<b>", APART.toUpperCase()])
      expect(mapArchive(archive(), ours, new Map([["answer-fundamental:own-heel", answer]])).open).toBe(1);
  });
});
