import { describe, expect, it } from "vitest";
import { findCycles } from "./find-cycles";

describe("findCycles", () => {
  it("finds a -> b -> c -> a and none in a diamond", () => {
    expect(
      findCycles(
        new Map([
          ["a", ["b"]],
          ["b", ["c"]],
          ["c", ["a"]],
        ]),
      ),
    ).toEqual([["a", "b", "c", "a"]]);
    expect(
      findCycles(
        new Map([
          ["a", ["b", "c"]],
          ["b", ["d"]],
          ["c", ["d"]],
          ["d", []],
        ]),
      ),
    ).toEqual([]);
    expect(findCycles(new Map([["a", ["a"]]]))).toEqual([["a", "a"]]);
  });
});
