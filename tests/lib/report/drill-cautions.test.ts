import { expect, it } from "vitest";
import type { Student } from "@/lib/domain/student";
import { cautionsFor } from "@/lib/report/cautions";
import { drillCautions } from "@/lib/report/drill-cautions";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const dot: Student = { id: "s", alias: "Dot", birthYear: 2016, hand: "right", zone: "UTC", clubs: "" };
const base = { start: "2026-09-01", end: null, dose: "", reps: null, daysAWeek: null };
type Given = Parameters<typeof drillCautions>[1]["drills"][number];
const say = (drills: readonly Partial<Given>[], student = dot) =>
  drillCautions(words, { student, drills: drills.map((each) => ({ ...base, ...each })), today: "2026-09-12" });
const fifteen = "15 minutes a day";

it.each([
  [[{ dose: fifteen, daysAWeek: 5 }], null],
  [[{ dose: "16 minutes a day", daysAWeek: 5 }], "80 minutes of drills a week"],
  [[{ minutesADay: 16, daysAWeek: 5 }], "80 minutes of drills a week"],
  [[{ reps: 60, daysAWeek: 5 }], null],
  [[{ reps: 61, daysAWeek: 5 }], "305 repeats of drills a week"],
  [[{ daysAWeek: 5 }], null],
  [[{ daysAWeek: 6 }], "6 days a week"],
  [
    [
      { dose: fifteen, daysAWeek: 3 },
      { dose: fifteen, daysAWeek: 3 },
    ],
    "90 minutes of drills a week",
  ],
  [[{ dose: "100 minutes a day" }], null],
  [[{ daysAWeek: 7, end: "2026-09-12" }], null],
  [[{ daysAWeek: 7, start: "2026-09-13" }], null],
  [[{ daysAWeek: 7, state: "taken-back" }], null],
] as [Partial<Given>[], string | null][])("%j at ten years: %s", (drills, named) => {
  const said = say(drills);
  expect(said).toHaveLength(named === null ? 0 : 1);
  if (named === null) return;
  for (const word of [`Asked of Dot at 10 years: ${named}.`, "free play", "licensed advice and local rules"])
    expect(said[0]).toContain(word);
  expect(said[0]).not.toMatch(/injured|diagnos/);
});

it("is said of a young body alone: up to 18 years, and only where the year of birth is known", () => {
  const much = [{ daysAWeek: 7 }];
  const born = (birthYear: number | null) => say(much, { ...dot, birthYear }).length;
  expect([born(2008), born(2007), born(null)]).toEqual([1, 0, 0]);
  const of = (birthYear: number | null) => cautionsFor(words, { ...dot, birthYear }, "2026-09-12").length;
  expect([of(2008), of(2007), of(null)]).toEqual([2, 1, 1]);
});
