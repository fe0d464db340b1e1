import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { wordsFor } from "@/lib/words/catalogue";
import { type Advisory, OLDEST_ANSWER_DAYS, readAdvisoryFile, readAudit, standingOf } from "./advisory-file";
import { readComponents } from "./component-list";

const ROOT = path.resolve(import.meta.dirname, "..", "..");
const FILE = path.join(ROOT, "advisories.json");
/** A registry that has not answered by then is taken for one that doesn't. */
const WAITS_MS = 60_000;
const words = wordsFor("en");

function tell(advisories: readonly Advisory[]): void {
  for (const { package: name, severity, title, range } of advisories)
    console.log(words.say("advisories.one", { name, severity, title, range }));
}

function main(): number {
  const components = readComponents(readFileSync(path.join(ROOT, "sbom.cdx.json"), "utf8"));
  const today = new Date().toISOString().slice(0, 10);
  const { stdout } = spawnSync("npm", ["audit", "--json"], { cwd: ROOT, encoding: "utf8", timeout: WAITS_MS });
  const answered = readAudit(stdout);
  if (answered !== null) {
    const asked = components.map(({ name, version }) => `${name}@${version}`).sort();
    writeFileSync(FILE, `${JSON.stringify({ askedOn: today, asked, advisories: answered }, null, 2)}\n`);
    tell(answered);
    console.log(words.say("advisories.answered", { count: answered.length, packages: asked.length }));
    return answered.length === 0 ? 0 : 1;
  }
  console.log(words.say("advisories.no-answer"));
  if (!existsSync(FILE)) {
    console.error(words.say("advisories.no-file"));
    return 1;
  }
  const file = readAdvisoryFile(readFileSync(FILE, "utf8"));
  if (file === null) {
    console.error(words.say("advisories.unreadable"));
    return 1;
  }
  const standing = standingOf(file, components, today);
  tell(standing.advisories);
  const facts = { days: standing.ageDays, count: standing.advisories.length, limit: OLDEST_ANSWER_DAYS };
  console.log(words.say(standing.tooOld ? "advisories.too-old" : "advisories.aged", facts));
  for (const name of standing.unasked) console.log(words.say("advisories.unasked", { name }));
  return standing.tooOld || standing.unasked.length > 0 || standing.advisories.length > 0 ? 1 : 0;
}

process.exitCode = main();
