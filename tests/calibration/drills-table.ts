import { POLICY_VERSION } from "@/lib/verdict/policy";
import type { SimulatedAcademy } from "./drills-population";
import type { DrillsScore } from "./drills-score";

/** One kind of academy and what the comparison made of it. */
export interface DrillsRow {
  readonly academy: SimulatedAcademy;
  readonly score: DrillsScore;
}

/** The page of a calibration of the comparison of drills. */
export function drillsTable(
  run: { readonly date: string; readonly command: string },
  rows: readonly DrillsRow[],
): string {
  const lines = rows.map(({ academy, score }) => {
    const found = score.found.map(({ share, of }) => (of === 0 ? "–" : `${share.toFixed(3)} of ${of}`));
    const cells = [
      academy.name,
      `${score.academies}`,
      `${score.effects}`,
      score.coverage.toFixed(3),
      `${score.bias >= 0 ? "+" : "−"}${Math.abs(score.bias).toFixed(3)}`,
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
    "Bounds: intervals .94 to .98, bias within .03, a false word in at most .03, .8 U found with 20 students or more in at least .95; each for coaches who choose by what is on file, students marked as waiting and an effect alike for all; where effects differ by .6 U between students a drill is found less often. The row with quick learners shows what nothing on file can repair; the comparison says so wherever a coach chose.",
    "",
  ].join("\n");
}
