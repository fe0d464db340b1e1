import { describe, expect, it } from "vitest";
import type { AssignmentRecord, LastGiven } from "@/lib/domain/drill-record";
import { type LibraryDrill, type ProposeSource, proposeDose, proposeDrill } from "@/lib/report/propose-drill";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const drill = (id: string, fundamentalId: string, usual: Partial<LibraryDrill> = {}): LibraryDrill => ({
  ...{ id, name: id, fundamentalId, dose: "", reps: null, minutesADay: null, daysAWeek: null, remeasureDays: null },
  ...usual,
});
const asked = { reps: null, minutesADay: null, daysAWeek: null, stopRule: "", remeasureOn: null };
const given = (drillId: string, start: string, facts: Partial<AssignmentRecord> = {}): AssignmentRecord => ({
  ...{
    id: `${drillId} ${start}`,
    drill: drillId,
    drillId,
    fundamentalId: "hinge",
    start,
    end: null,
    dose: "",
    ...asked,
  },
  ...{ who: "", recordedAt: null, endWhy: null, state: "stands" },
  ...facts,
});
const used = (drillId: string, start: string, facts: Partial<LastGiven> = {}): LastGiven => ({
  ...{ drillId, start, dose: "", ...asked },
  ...facts,
});
const library = [drill("arch", "hinge"), drill("bow", "hinge"), drill("cup", "hinge"), drill("wall", "hip-sway")];
const source: ProposeSource = { library, use: [], own: [], rest: 7, today: "2026-09-12" };
const order = (change: Partial<ProposeSource>, wish = {}) =>
  proposeDrill(words, { ...source, ...change }, { fundamentalId: "hinge", ...wish });

describe("which drill", () => {
  it.each([
    ["by name where nothing was ever given", {}, ["arch", "bow", "cup", "wall"]],
    [
      "the one given last to anybody first",
      { use: [used("cup", "2026-08-01"), used("bow", "2026-07-01")] },
      ["cup", "bow", "arch", "wall"],
    ],
    [
      "the student’s own before anybody’s, the latest first",
      {
        use: [used("cup", "2026-08-01")],
        own: [
          given("bow", "2026-05-01"),
          given("arch", "2026-06-01"),
          given("cup", "2026-07-01", { state: "taken-back" as const }),
        ],
      },
      ["arch", "bow", "cup", "wall"],
    ],
  ])("%s", (_name, change, ids) => {
    const proposal = order(change);
    expect(proposal.library.map(({ id }) => id)).toEqual(ids);
    expect(proposal.drillId).toBe(ids[0]);
  });

  it("one for another fundamental is never proposed, and one just ended only after all others for it", () => {
    expect(order({}, { fundamentalId: "tilt-kept" }).drillId).toBeNull();
    expect(order({ own: [given("arch", "2026-06-01")] }, { not: "arch" }).library.map(({ id }) => id)).toEqual([
      ...["bow", "cup", "arch", "wall"],
    ]);
    expect(proposeDrill(words, source, {}).drillId).toBe("arch");
    expect(proposeDrill(words, { ...source, library: [] }, {}).drillId).toBeNull();
  });

  it("one that is given again keeps its drill, its fundamental and its dose", () => {
    const again = given("wall", "2026-06-01", { fundamentalId: "hip-sway", reps: 15, remeasureOn: "2026-06-15" });
    expect(order({}, { again })).toMatchObject({
      ...{ drillId: "wall", dose: { reps: 15, remeasureOn: "2026-09-26", by: "own", givenOn: "2026-06-01" } },
    });
  });
});

describe("how it is given", () => {
  const usual = drill("arch", "hinge", { dose: "slowly", reps: 20, minutesADay: 10, daysAWeek: 5, remeasureDays: 10 });
  const propose = (change: Partial<ProposeSource>, one = usual, start = "2026-09-12") =>
    proposeDose(words, { ...source, ...change }, one, start);

  it("as the student had it last; else as it is usual; else as anybody had it last; else nothing but a day", () => {
    const own = [given("arch", "2026-08-01", { daysAWeek: 3, stopRule: "easy", remeasureOn: "2026-08-15" })];
    expect(propose({ own })).toEqual({
      ...{ reps: null, minutes: null, daysAWeek: 3, words: "", stop: "easy" },
      ...{ remeasureOn: "2026-09-26", by: "own", givenOn: "2026-08-01" },
    });
    expect(propose({ own: [given("arch", "2026-08-01", { state: "taken-back", reps: 9 })] })).toMatchObject({
      by: "usual",
    });
    expect(propose({})).toEqual({
      ...{ reps: 20, minutes: 10, daysAWeek: 5, words: "slowly", stop: "" },
      ...{ remeasureOn: "2026-09-22", by: "usual", givenOn: null },
    });
    const written = { dose: "10 minutes a day; with her father", stopRule: "when Lena’s wrist hurts" };
    const use = [used("arch", "2026-08-01", { reps: 30, remeasureOn: "2026-08-08", ...written })];
    expect(propose({ use }, drill("arch", "hinge"))).toMatchObject({
      reps: 30,
      by: "others",
      ...{ minutes: 10, words: "", stop: "" },
      remeasureOn: "2026-09-19",
    });
    expect(propose({}, drill("arch", "hinge"))).toMatchObject({ reps: null, by: "none", remeasureOn: "2026-10-03" });
  });

  it("counts to the next measure from the first day; 14 days of practice and the rest, where nobody set one", () => {
    const bare = drill("arch", "hinge");
    expect(propose({}, bare, "2026-09-01").remeasureOn).toBe("2026-09-22");
    expect(propose({ rest: 10 }, bare, "2026-09-01").remeasureOn).toBe("2026-09-25");
    expect(propose({}, bare, "soon").remeasureOn).toBe("2026-10-03");
    // Put off by decisions to half a year later: 28 days are the most that are proposed again.
    const late = (remeasureOn: string) =>
      propose({ own: [given("arch", "2026-08-01", { reps: 5, remeasureOn })] }, bare);
    expect([late("2026-08-29").remeasureOn, late("2026-08-30").remeasureOn]).toEqual(["2026-10-10", "2026-10-03"]);
    // A measure on the first day or before it was no wait.
    const own = [given("arch", "2026-08-01", { reps: 5, remeasureOn: "2026-08-01" })];
    expect(propose({ own }, bare).remeasureOn).toBe("2026-10-03");
  });
});
