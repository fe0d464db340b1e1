import { describe, expect, it } from "vitest";
import { parseKeepRequest } from "@/lib/ingest/parse-keep-request";

const whole = {
  draft: "6c2d1f0a-5c1e-4b6e-9a43-0d8c1f2e3a4b",
  form: "session-form",
  studentId: "s1",
  of: "",
  version: 3,
  writer: "w",
  turn: 7,
  entries: [["note", "wind"]],
  settles: "",
  act: "keep",
};

describe("parseKeepRequest", () => {
  it("reads a form as a page sends it, and passes over what it doesn't know", () => {
    expect(parseKeepRequest(JSON.stringify({ ...whole, academyId: "other", role: "owner" }))).toEqual(whole);
  });

  it.each([
    ["no JSON", "{"],
    ["a bare word", '"x"'],
    ["a version that is a text", JSON.stringify({ ...whole, version: "3" })],
    ["a version below nothing", JSON.stringify({ ...whole, version: -1 })],
    ["an id with a path in it", JSON.stringify({ ...whole, draft: "../../../../../../../../../../etc/passwd" })],
    ["a form with a blank", JSON.stringify({ ...whole, form: "session-form s2" })],
    ["an entry of three", JSON.stringify({ ...whole, entries: [["a", "b", "c"]] })],
    ["an entry that is a number", JSON.stringify({ ...whole, entries: [["a", 1]] })],
    ["a value of 200,001 characters", JSON.stringify({ ...whole, entries: [["a", "x".repeat(200_001)]] })],
    ["4,001 fields", JSON.stringify({ ...whole, entries: Array.from({ length: 4001 }, () => ["a", "b"]) })],
    ["a depth of 100,000", `${"[".repeat(100_000)}${"]".repeat(100_000)}`],
    ["another act", JSON.stringify({ ...whole, act: "erase" })],
  ])("refuses %s", (_name, text) => {
    expect(parseKeepRequest(text)).toBeNull();
  });

  it("leaves the prototype clean", () => {
    parseKeepRequest(`{"__proto__":{"x":1},${JSON.stringify(whole).slice(1)}`);
    expect(({} as { x?: number }).x).toBeUndefined();
  });
});
