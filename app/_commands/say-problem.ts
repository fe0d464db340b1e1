import type { CopyProblem } from "@/db/backup";
import type { Words } from "@/lib/words/catalogue";

/** What is wrong with a database file, in words. */
export function sayProblem(words: Words, problem: CopyProblem): string {
  const { kind, ...args } = problem;
  return words.say(`restore.problem.${kind}`, args);
}
