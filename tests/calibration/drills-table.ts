import { POLICY_VERSION } from "@/lib/verdict/policy";
import type { SimulatedAcademy } from "./drills-population";
import type { DrillsScore } from "./drills-score";
import type { StaysScore } from "./stays-score";

/** One kind of academy and what the comparison made of it. */
export interface DrillsRow {
  readonly academy: SimulatedAcademy;
  readonly score: DrillsScore;
}

/** One kind of academy whose drills end, and what the comparison made of what stays. */
export interface StaysRow {
  readonly academy: SimulatedAcademy;
  readonly scores: readonly StaysScore[];
}

/** The page of a calibration of the comparison of drills. */
export function drillsTable(
  run: { readonly date: string; readonly command: string },
  rows: readonly DrillsRow[],
  stays: readonly StaysRow[],
): string {
  const lines = rows.map(({ academy, score }) => {
    const found = score.found.map(({ share, of }) => (of === 0 ? "–" : `${share.toFixed(3)} of ${of}`));
    const cells = [
      academy.name,
      `${score.academies}`,
      `${score.effects}`,
      score.coverage.toFixed(3),
      signed(score.bias),
      score.halfWidth.toFixed(2),
      score.falseWorks.toFixed(3),
      ...found,
      score.noBetter.toFixed(3),
      score.wronglyNoBetter.toFixed(3),
    ];
    return `| ${cells.join(" | ")} |`;
  });
  return [
    "# Comparison of drills on simulated academies",
    "",
    `Run of ${run.date}: \`${run.command}\`, policy ${POLICY_VERSION}.`,
    "",
    "Six coaches with natural rates of their own, eight drills given by coaches' own leanings after a run .3 U below before, the worse the likelier; effects in U, the sd of one session's mean. Bias is the mean over all drills with five students or more; drills of one academy share its reference, so its standard error is that of the academies (about .01 at 400).",
    "",
    "| academy | academies | effects | 95 % intervals that hold the truth | bias, U | half-width, U | academies with a useless drill said to work | .8 U found, 10–19 students | .8 U found, 20 or more | useless, 10 or more students: no better | worth .8 U: said no better |",
    "|---|---|---|---|---|---|---|---|---|---|---|",
    ...lines,
    "",
    "Bounds: intervals .94 to .98, bias within .03, a false word in at most .03, .8 U found with 20 students or more in at least .95; each for coaches who choose by what is on file, students marked as waiting and an effect alike for all; where effects differ by .6 U between students a drill is found less often, which is the sample’s doing (below). The row with quick learners shows what nothing on file can repair; the comparison says so wherever a coach chose.",
    "",
    ...powerLines(rows),
    "",
    ...staysLines(stays),
    "",
  ].join("\n");
}

function powerLines(rows: readonly DrillsRow[]): readonly string[] {
  const worth = rows.flatMap(({ academy, score: { power } }) => (power === null ? [] : [{ academy, power }]));
  return [
    "## How many students it takes",
    "",
    "Drills worth .8 U by how many students are on them. The true error is how far estimates lie about the truth; theory is the power of a t test that has this error, with as many degrees of freedom as the comparison takes, at the first step of Holm over the drills of its academy.",
    "",
    "| academy | students | drills | said to work | by theory | true error, U | error that is said, U |",
    "|---|---|---|---|---|---|---|",
    ...worth.flatMap(({ academy, power }) =>
      power.sizes.map(({ from, to, of, found, theory, said, true: error }) => {
        const shares = [found, theory, error, said].map((value) => (of === 0 ? "–" : value.toFixed(3)));
        return `| ${[academy.name, to === 999 ? `${from} or more` : `${from}–${to}`, `${of}`, ...shares].join(" | ")} |`;
      }),
    ),
    "",
    ...worth.map(
      ({ academy, power: { enough } }) =>
        `- ${academy.name}: ${enough === null ? "no size was found by which theory has .95." : `by theory .95 are found from ${enough} students on the drill.`}`,
    ),
  ];
}

function staysLines(stays: readonly StaysRow[]): readonly string[] {
  const lines = stays.flatMap(({ academy, scores }) =>
    scores.map((score) => {
      const bias = `${signed(score.bias)} ± ${score.biasError.toFixed(3)}`;
      const sizes = [`${score.effects}`, score.students.toFixed(0), score.coverage.toFixed(3), bias];
      return `| ${[academy.name, score.kept.toFixed(1), ...sizes, score.halfWidth.toFixed(2)].join(" | ")} |`;
    }),
  );
  return [
    "## What stays",
    "",
    "The same academies with drills that end four to ten weeks after their start: all are worth .8 U until then, and within three weeks fall in a line to what stays. Effects are on used sessions 21 to 120 days after the end, of drills with five students or more who have one. ± is the standard error from academy to academy.",
    "",
    "| academy | stays, U | effects | students, mean | 95 % intervals that hold the truth | bias, U | half-width, U |",
    "|---|---|---|---|---|---|---|",
    ...lines,
    "",
    "Bounds: intervals .94 to .98 and bias within .03 for each of the three, for students marked as waiting and what stays alike for all.",
  ];
}

function signed(value: number): string {
  return `${value >= 0 ? "+" : "−"}${Math.abs(value).toFixed(3)}`;
}
