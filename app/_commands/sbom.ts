import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import path from "node:path";
import { wordsFor } from "@/lib/words/catalogue";
import { normaliseComponents, readComponents } from "./component-list";

const ROOT = path.resolve(import.meta.dirname, "..", "..");
const words = wordsFor("en");

function main(): number {
  const args = ["sbom", "--sbom-format", "cyclonedx", "--package-lock-only"];
  const { status, stdout } = spawnSync("npm", args, { cwd: ROOT, encoding: "utf8", maxBuffer: 1e8 });
  if (status !== 0) {
    console.error(words.say("sbom.failed"));
    return 1;
  }
  const list = normaliseComponents(stdout);
  writeFileSync(path.join(ROOT, "sbom.cdx.json"), list);
  console.log(words.say("sbom.written", { count: readComponents(list).length }));
  return 0;
}

process.exitCode = main();
