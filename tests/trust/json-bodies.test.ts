import { randomUUID } from "node:crypto";
import { expect, it } from "vitest";
import { parseKeepRequest } from "@/lib/ingest/parse-keep-request";
import { spentSince } from "../cpu-time";
import { countCases } from "./count-cases";

// J5: what a page's script sends as JSON. A file of JSON to import: tests/trust/imports-bombs.test.ts.

const J5 = countCases("J5: JSON bodies", 20);
const whole = { draft: randomUUID(), form: "session-form", studentId: "s01", version: 0, writer: "w", turn: 1 };
const good = { ...whole, entries: [["note", "x"]], settles: "", act: "keep" };
const text = JSON.stringify(good);
const deep = (open: string, close: string, depth: number) => `${open.repeat(depth)}${close.repeat(depth)}`;

const REFUSED: readonly (readonly [string, string])[] = [
  ["nothing", ""],
  ["half", text.slice(0, -10)],
  ["a list 100,000 deep", deep("[", "]", 100_000)],
  ["an object 100,000 deep", `${'{"a":'.repeat(100_000)}1${"}".repeat(100_000)}`],
  ["entries 100,000 deep", text.replace('[["note","x"]]', deep("[", "]", 100_000))],
  ["a list", "[]"],
  ["null", "null"],
  ["a number", "1"],
  ["a text", '"x"'],
  ["a version as text", text.replace('"version":0', '"version":"0"')],
  ["a version over 2^53", text.replace('"version":0', '"version":9007199254740993')],
  ["a version of 1e400", text.replace('"version":0', '"version":1e400')],
  ["a negative version", text.replace('"version":0', '"version":-1')],
  ["an entry of three", text.replace('["note","x"]', '["note","x","y"]')],
  ["an entry that is an object", text.replace('["note","x"]', '{"note":"x"}')],
  ["a form by the name of a prototype", text.replace('"session-form"', '"__proto__"')],
  ["an id with SQL", text.replace(whole.draft, "' OR 1=1 --")],
  ["5,000 entries", JSON.stringify({ ...good, entries: Array.from({ length: 5000 }, (_, n) => [`n${n}`, ""]) })],
  ["a NUL", `${text}\u0000`],
  ["NaN", text.replace('"version":0', '"version":NaN')],
];

it.each(REFUSED)("%s is refused within a second", (_name, body) => {
  const from = process.cpuUsage();
  expect(parseKeepRequest(body)).toBeNull();
  expect(spentSince(from)).toBeLessThan(1000);
  J5.add();
});

it("keys of the prototype change nothing, here or in any object, and doubled keys count once", () => {
  for (const key of ["__proto__", "constructor", "prototype"]) {
    const read = parseKeepRequest(text.replace("{", `{"${key}":{"act":"look","polluted":true},`));
    expect(read?.act).toBe("keep");
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
    expect(Object.hasOwn(read ?? {}, "polluted")).toBe(false);
    J5.add();
  }
  const named = parseKeepRequest(text.replace('"note"', '"__proto__"'));
  expect(named?.entries).toEqual([["__proto__", "x"]]);
  expect(parseKeepRequest(text.replace("{", '{"act":"look",'))?.act).toBe("keep");
  J5.add(2);
});
