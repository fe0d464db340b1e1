import { writeFileSync } from "node:fs";
import path from "node:path";
import { CONTACT_POLICY_VERSION } from "@/lib/verdict/contact-thresholds";
import { POLICY_VERSION } from "@/lib/verdict/policy";
import { type ContactKind, type ContactScore, scoreContact } from "./contact-score";
import { runOptions } from "./run-options";

const { date, numbers, command } = runOptions("calibrate:contact", { unchanged: 200, changed: 100, seed: 20261126 });
const { unchanged, changed, seed } = numbers;

const correlations = [0.15, 0.1, 0.05, 0];
const kinds: readonly ContactKind[] = [
  ...correlations.flatMap((correlation) =>
    [0.4, 0.6, 0.2].map((share) => ({ before: share, after: share, correlation })),
  ),
  ...correlations.flatMap((correlation) => [0.6, 0.7].map((after) => ({ before: 0.4, after, correlation }))),
];
const scores = kinds.map((kind, nth) => {
  const score = scoreContact(kind, kind.before === kind.after ? unchanged : changed, seed + 104_729 * (nth + 1));
  console.error(JSON.stringify(score));
  return score;
});

function rate(count: number, of: number): string {
  const share = count / of;
  return `${share.toFixed(3)} ± ${Math.sqrt((share * (1 - share)) / of).toFixed(3)}`;
}

function flatRow(row: ContactScore): string {
  return `| ${row.before} | ${row.correlation} | ${row.seasons} | ${rate(row.falseWord, row.seasons)} | ${rate(row.in80, row.seasons)} | ${rate(row.in95, row.seasons)} |`;
}

function stepRow(row: ContactScore): string {
  const cells = [row.found20, row.found, row.falseWord, row.in80, row.in95].map((count) => rate(count, row.seasons));
  return `| ${row.before} to ${row.after} | ${row.correlation} | ${row.seasons} | ${cells.slice(0, 3).join(" | ")} | ${row.takenBack} of ${row.found} | ${cells.slice(3).join(" | ")} |`;
}

const flat = scores.filter((row) => row.before === row.after);
const steps = scores.filter((row) => row.before !== row.after);
const sum = (rows: readonly ContactScore[], of: (row: ContactScore) => number) =>
  rows.reduce((total, row) => total + of(row), 0);
const page = `# Contact: false words, power and coverage: ${date}

\`${command}\`

Policy ${POLICY_VERSION}, ${CONTACT_POLICY_VERSION}; its limits were chosen on seed 11. Seasons of 40 sessions of 5 to 30 balls, looked at after every session; a change holds from the 11th session on.
± is one standard error of the simulation. Simulator and model share the beta distribution of a day's chance, which favours the model; days follow each other independently.

## Unchanged

Of all ${sum(flat, (row) => row.seasons)}: ${rate(
  sum(flat, (row) => row.falseWord),
  sum(flat, (row) => row.seasons),
)} ever called changed (.05 is promised in every row).

| share | correlation within a session | seasons | ever called changed | share now within its 80 of 100 | within its 95 of 100 |
|---|---|---|---|---|---|
${flat.map(flatRow).join("\n")}

## Changed

| share | correlation within a session | seasons | found by session 20 | by session 40 | early or the wrong way | taken back | share now within its 80 of 100 | within its 95 of 100 |
|---|---|---|---|---|---|---|---|---|
${steps.map(stepRow).join("\n")}
`;
writeFileSync(path.join(import.meta.dirname, "last-contact.md"), page);
console.log(page);
