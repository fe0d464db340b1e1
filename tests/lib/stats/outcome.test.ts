import { describe, expect, it } from "vitest";
import { ok, tooFew } from "@/lib/stats/outcome";

describe("outcome", () => {
  it("wraps a value: ok(3) holds 3", () => {
    expect(ok(3)).toEqual({ kind: "ok", value: 3 });
  });

  it("says how many there are and how many it takes: 1 of 2", () => {
    expect(tooFew(1, 2)).toEqual({ kind: "too-few", have: 1, need: 2 });
  });
});
