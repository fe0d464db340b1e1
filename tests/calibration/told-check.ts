import { writeFileSync } from "node:fs";
import path from "node:path";
import { POLICY_VERSION } from "@/lib/verdict/policy";
import { runOptions } from "./run-options";
import { TOLD_ACADEMY, toldSeason } from "./told-score";

const { date, numbers, command } = runOptions("calibrate:told", { academies: 40, seed: 20261130 });
const { academies, seed } = numbers;

const scores = Array.from({ length: academies }, (_, nth) => toldSeason(TOLD_ACADEMY, seed + 104_729 * nth));
const sum = (of: (score: (typeof scores)[number]) => number): number =>
  scores.reduce((total, score) => total + of(score), 0);
const families = sum((score) => score.families);
const share = (count: number): string => {
  const p = count / families;
  const half = 1.96 * Math.sqrt((p * (1 - p)) / families);
  return `${count} of ${families}, ${(100 * p).toFixed(2)} % (± ${(100 * half).toFixed(2)})`;
};
const page = `# Families told a change in a season in which nothing changes

${date}, policy ${POLICY_VERSION}, seed ${seed}: \`${command}\`

${academies} academies of ${TOLD_ACADEMY.families} families with ${TOLD_ACADEMY.fundamentals} fundamentals each, ${TOLD_ACADEMY.sessions} films; each
academy's noise learned from its own 60 tracks. Bar (SEASON.md 19): at most 3 % of families ever told a change.

| | families |
|---|---|
| a change on the list after any film: told after every film | ${share(sum((score) => score.everListed))} |
| a change in the message after the last film | ${share(sum((score) => score.toldAtEnd))} |

Academies with any family told: ${scores.filter((score) => score.everListed > 0).length} of ${academies}; most in one: ${Math.max(...scores.map((score) => score.everListed))}.
`;
writeFileSync(path.join(import.meta.dirname, "last-told.md"), page);
console.log(page);
