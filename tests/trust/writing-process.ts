import { readFileSync } from "node:fs";
import path from "node:path";
import type { StudentViewer } from "@/app/_server/gate";
import { confirmImport } from "@/app/_server/import/write-import";
import { saveSession } from "@/app/_server/session/session-desk";
import { formOf, sessionFields, viewerOfAri } from "./own-academy";

// Saves, or imports, one thing after another until it is killed, and says each that was acknowledged.

const [, , act = "", run = ""] = process.argv;
const sample = readFileSync(path.join("seed", "samples", "season-long.csv"), "utf8");

function save(viewer: StudentViewer): string {
  const outcome = saveSession(viewer, formOf(sessionFields("2026-09-01")));
  if (outcome.kind !== "added") throw new Error("a session was refused");
  return outcome.sessionId;
}

async function importOne(viewer: StudentViewer, count: number): Promise<string> {
  const alias = `Nia${run}x${count}`;
  const outcome = await confirmImport(viewer, {
    fileName: `${alias}.csv`,
    file: Buffer.from(sample.replaceAll("Nia", alias)).toString("base64"),
    answers: [
      [`answer:student:${alias.toLowerCase()}`, "new-right"],
      [`answer-givenBy:student:${alias.toLowerCase()}`, "herself"],
    ],
  });
  if (outcome.kind !== "imported") throw new Error(`not imported: ${outcome.kind}`);
  return alias;
}

async function main(): Promise<void> {
  const viewer = await viewerOfAri();
  process.stdout.write("begun\n");
  for (let count = 0; ; count++) {
    const name = act === "save" ? save(viewer) : await importOne(viewer, count);
    process.stdout.write(`acknowledged ${name}\n`);
    // Lets the line out: what a killed process has not said was not acknowledged.
    await new Promise((resolve) => setImmediate(resolve));
  }
}

void main();
