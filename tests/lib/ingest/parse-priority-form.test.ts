import { expect, it } from "vitest";
import { BY_ORDER, parsePriorityForm } from "@/lib/ingest/parse-priority-form";

const offered = { fundamentals: ["hinge", "hip-sway"], clubGroups: ["iron"] };

function parse(fields: Readonly<Record<string, string>>) {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) data.set(name, value);
  const read = parsePriorityForm(data, offered);
  return read.kind === "ok" ? read.value : read.issues.map(({ field, code }) => `${field} ${code}`);
}

const whole = { fundamentalId: "hinge", clubGroup: "iron", reason: " He asked for it. " };

it("reads which fundamental, with which clubs, and why; by the order of work is none", () => {
  expect(parse(whole)).toEqual({ fundamentalId: "hinge", clubGroup: "iron", reason: "He asked for it." });
  expect(parse({ ...whole, fundamentalId: BY_ORDER })).toMatchObject({ fundamentalId: null });
});

it("wants a reason of at most 300 characters, without marks that can't be seen", () => {
  expect(parse({ ...whole, reason: "  " })).toEqual(["reason missing"]);
  expect(parse({ ...whole, reason: "x".repeat(301) })).toEqual(["reason too-long"]);
  expect(parse({ ...whole, reason: "a\u202eb" })).toEqual(["reason hidden-mark"]);
});

it("refuses what the page doesn't offer: another fundamental, other clubs, nothing at all", () => {
  expect(parse({ ...whole, fundamentalId: "own-gone" })).toEqual(["fundamentalId not-a-choice"]);
  expect(parse({ ...whole, clubGroup: "driver" })).toEqual(["fundamentalId not-a-choice"]);
  expect(parse({})).toEqual(["fundamentalId missing", "fundamentalId not-a-choice", "reason missing"]);
});
