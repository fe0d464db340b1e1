import { randomUUID } from "node:crypto";
import { expect, it } from "vitest";
import { bodyOf } from "@/app/_server/draft/form-draft";
import { readDraft } from "@/db/read/drafts";
import { startAcademy } from "../app/server/own-academy-data";
import { type Child, seededUniform, startChild } from "./child";
import { viewerOfAri } from "./own-academy";

// D13, short: eight clients edit one reading by version, some are killed; the history is checked.

const SEED = 20261128;
const CLIENTS = 8;
const EDITS = 40;
const KILLED = 2;

interface Op {
  readonly client: string;
  readonly kind: "read" | "trying" | "kept" | "told";
  readonly base: number;
  readonly version: number;
  readonly value: string;
  readonly here: string;
  readonly there: string;
  readonly begun: number;
  readonly ended: number;
}

function opsOf(children: readonly Child[]): readonly Op[] {
  return children.flatMap((child) =>
    child.lines.flatMap((line) => (line.startsWith("op ") ? [JSON.parse(line.slice(3)) as Op] : [])),
  );
}

/** Each version's value, as its writer was told; nobody but one may have been told a version. */
function valuesByVersion(ops: readonly Op[]): ReadonlyMap<number, string> {
  const values = new Map<number, string>();
  for (const op of ops.filter(({ kind }) => kind === "kept")) {
    expect(values.has(op.version)).toBe(false);
    values.set(op.version, op.value);
    // Edited from the very version before it: nothing between was overwritten unseen.
    expect(op.version).toBe(op.base + 1);
  }
  return values;
}

it("D13: one order explains every read, and every outdated edit is told both values", async () => {
  const { folder, remove } = await startAcademy();
  const viewer = await viewerOfAri();
  const draft = randomUUID();
  const uniform = seededUniform(SEED);
  const children = Array.from({ length: CLIENTS }, (_, at) =>
    startChild("editing-process.ts", [draft, `c${at}`, String(EDITS), String(SEED + at)], { PROOFBAND_DATA: folder }),
  );
  await Promise.all(children.map((child) => child.saying("ready")));
  const dying = children.slice(0, KILLED).map(async (child) => {
    await new Promise((resolve) => setTimeout(resolve, uniform() * 300));
    child.process.kill("SIGKILL");
  });
  await Promise.all([...dying, ...children.map((child) => child.ended)]);

  const ops = opsOf(children);
  const values = valuesByVersion(ops);
  // A client that was killed may have kept an edit without being told.
  const answered = new Set(ops.filter(({ kind }) => kind === "kept" || kind === "told").map(({ value }) => value));
  const cutOff = new Set(ops.filter((op) => op.kind === "trying" && !answered.has(op.value)).map(({ value }) => value));
  expect(cutOff.size).toBeLessThanOrEqual(KILLED);
  const versions = [...values.keys()].sort((a, b) => a - b);
  let reads = 0;
  for (const op of ops.filter(({ kind, version }) => kind === "read" && version > 0)) {
    reads++;
    const known = values.get(op.version);
    if (known === undefined) expect(cutOff.has(op.value)).toBe(true);
    else expect(op.value).toBe(known);
  }
  const told = ops.filter(({ kind }) => kind === "told");
  const ever = new Set([...values.values(), ...cutOff]);
  for (const op of told) {
    expect(op.here).toBe(op.value);
    expect(ever.has(op.there)).toBe(true);
    expect(op.there).not.toBe(op.value);
  }
  // What ended before another began is not seen as later by it.
  const timed = ops.filter(({ kind }) => kind === "read" || kind === "kept").sort((a, b) => a.begun - b.begun);
  for (const [at, op] of timed.entries())
    for (const later of timed.slice(at + 1))
      if (op.ended < later.begun) expect(later.version).toBeGreaterThanOrEqual(op.version);
  const row = readDraft(viewer.db, viewer.scope, draft);
  const last = row ? (bodyOf(row).entries[0]?.[1] ?? "") : "";
  expect([values.get(versions.at(-1) ?? 0), ...cutOff]).toContain(last);
  expect(told.length).toBeGreaterThan(20);
  expect(values.size).toBeGreaterThan(20);
  console.log(
    `D13: seed ${SEED}, ${CLIENTS} clients, ${KILLED} killed: ${reads} reads, ${values.size} edits kept, ${told.length} told both`,
  );
  remove();
}, 120_000);
