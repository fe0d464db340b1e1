import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { personalWordsIn } from "../e2e/personal-words";
import { allServed, FAMILY_LOG, FAMILY_WORDS, SERVED_LOG } from "../e2e/served";
import { expect, test } from "../e2e/watched";

// P6: all that the server wrote out while every other test ran in the browser.

/** What is on file in every academy that was served. */
function personalWords(): ReadonlySet<string> {
  const files = allServed.flatMap(({ data }) =>
    ["demo", "academy"].map((each) => path.join(data, each, "proofband.db")),
  );
  const kept = files.filter((each) => existsSync(each)).flatMap(personalWordsIn);
  return new Set([...kept, ...readFamilys()]);
}

/** Only where the family's pages were looked at in this run. */
function readFamilys(): readonly string[] {
  return existsSync(FAMILY_WORDS) ? (JSON.parse(readFileSync(FAMILY_WORDS, "utf8")) as readonly string[]) : [];
}

test("P6: no line of a whole run's log names anybody, holds a token or says what was typed", () => {
  const log = [SERVED_LOG, FAMILY_LOG]
    .filter((each) => existsSync(each))
    .map((each) => readFileSync(each, "utf8"))
    .join("\n");
  const lines = log.split("\n");
  const words = personalWords();
  expect(words.size).toBeGreaterThan(60);
  expect(lines.some((line) => line.includes(" refused "))).toBe(true);
  // In capitals or not: whatever passes a text on may have changed them.
  const told = [...words].filter((word) =>
    new RegExp(`(?<![\\w.-])${word.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&")}(?![\\w-])`, "i").test(log),
  );
  expect(told).toEqual([]);
  expect(log).not.toMatch(/session_token|Bearer pbk_|two larches in the wind|a bucket of range balls/i);
  console.log(`P6: ${words.size} words and tokens looked for in ${lines.length} lines of the run's log`);
});
