import { describe, expect, it } from "vitest";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import { buildPrescribe, type PrescribeSource } from "@/lib/report/build-prescribe";
import { proposeDrill } from "@/lib/report/propose-drill";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const rails = {
  ...{ id: "d2", name: "Rails", fundamentalId: "foot-line", dose: "", reps: 20, minutesADay: 10, daysAWeek: 4 },
  remeasureDays: 14,
};
const running: AssignmentRecord = {
  ...{ id: "a1", drill: "Rails", drillId: "d2", fundamentalId: "foot-line", start: "2026-08-20", end: null, dose: "" },
  ...{ reps: 20, minutesADay: null, daysAWeek: 4, stopRule: "three films inside", remeasureOn: "2026-09-20" },
  ...{ who: "", recordedAt: null, endWhy: null, state: "stands" },
};
const rules = { library: [rails], use: [], own: [], rest: 7, today: "2026-09-12" };
const build = (change: Partial<PrescribeSource> = {}, library = [rails]) =>
  buildPrescribe(words, {
    ...{ studentId: "s1", fundamentalId: "foot-line", running: null, stop: [], today: "2026-09-12" },
    proposal: proposeDrill(words, { ...rules, library }, { fundamentalId: "foot-line" }),
    ...change,
  });
const values = ({ facts }: ReturnType<typeof build>) => facts.map(({ value }) => value);

describe("the drill for a fundamental, one press away", () => {
  it("proposes one with its dose, its stop and its next measure, and the press opens the form for it", () => {
    expect(build()).toMatchObject({
      heading: "Rails",
      press: { href: "/students/s1/drills/new?for=foot-line", label: "Prescribe Rails" },
    });
    expect(values(build())).toEqual([
      ...["20 repeats a day, 10 minutes a day, 4 days a week", "at any pain", "Sat 26 Sep, in 14 days"],
    ]);
  });

  it("the one that runs is opened; once its day has come the press leads to the decision", () => {
    const open = build({ running });
    expect(open.press).toEqual({ href: "/students/s1/drills/a1", label: "Open Rails" });
    expect(values(open)).toEqual([
      ...["20 repeats a day, 4 days a week", "at any pain; else: three films inside", "Sun 20 Sep, in 8 days"],
    ]);
    const due = build({ running: { ...running, remeasureOn: "2026-09-12" } });
    expect(due.press).toEqual({
      href: "/students/s1/drills/a1/decide",
      label: "Decide about Rails: its day came on 12 Sep",
    });
    expect(values(due).at(-1)).toBe("Sat 12 Sep, today");
    expect(values(build({ running: { ...running, remeasureOn: null } })).at(-1)).toBe("no day is set");
  });

  it("an empty library is said, and pain or a pause comes with whatever is shown", () => {
    const empty = build({ stop: ["Stop first."] }, []);
    expect(empty).toMatchObject({ facts: [], stop: ["Stop first."], press: { label: "Prescribe a drill" } });
  });
});
