import { randomUUID } from "node:crypto";
import { bodyOf } from "@/app/_server/draft/form-draft";
import { keepDraft } from "@/app/_server/draft/keep-draft";
import { readDraft } from "@/db/read/drafts";
import { seededUniform } from "./child";
import { viewerOfAri } from "./own-academy";

// One client that reads one reading and edits it by the version that it has seen, and says what it was told.

const [, , draft = "", name = "", edits = "", seed = ""] = process.argv;
const CELL = "r.1.hinge";

function say(line: object): void {
  process.stdout.write(`op ${JSON.stringify({ client: name, ...line })}\n`);
}

async function main(): Promise<void> {
  const viewer = await viewerOfAri();
  const uniform = seededUniform(Number(seed));
  const pause = () => new Promise((resolve) => setTimeout(resolve, uniform() * 8));
  process.stdout.write("ready\n");
  let left = Number(edits);
  while (left > 0) {
    const begun = performance.timeOrigin + performance.now();
    const row = readDraft(viewer.db, viewer.scope, draft);
    const seen = row ? bodyOf(row).entries.find(([field]) => field === CELL)?.[1] : "";
    const read = performance.timeOrigin + performance.now();
    say({ kind: "read", version: row?.version ?? 0, value: seen, begun, ended: read });
    await pause();
    const value = `${name}-${left}`;
    // A window of its own for each edit, so that none is taken for the newest of the same window.
    const request = { draft, form: "session-form", studentId: viewer.student.studentId, writer: randomUUID(), turn: 1 };
    say({ kind: "trying", value, base: row?.version ?? 0 });
    await new Promise((resolve) => setImmediate(resolve));
    const from = performance.timeOrigin + performance.now();
    const told = keepDraft(viewer, { ...request, version: row?.version ?? 0, entries: [[CELL, value]], settles: "" });
    const ended = performance.timeOrigin + performance.now();
    if (told.kind === "changed") {
      const [difference] = told.differences;
      say({
        kind: "told",
        base: row?.version ?? 0,
        value,
        here: difference?.here[0],
        there: difference?.there[0],
        begun: from,
        ended,
      });
    } else if (told.kind === "kept")
      say({ kind: "kept", base: row?.version ?? 0, version: told.version, value, begun: from, ended });
    left--;
    await pause();
  }
  process.stdout.write("done\n");
  process.exit(0);
}

void main();
