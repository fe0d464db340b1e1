import { expect, it } from "vitest";
import { changedNames } from "@/app/_ui/keep/form-entries";

it("names the fields that hold something else now: changed, gone, new, or ticked otherwise", () => {
  const before = [
    ["day", "2026-11-24"],
    ["note", "wind"],
    ["marks", "a"],
    ["marks", "b"],
    ["gone", "x"],
  ] as const;
  const now = [
    ["day", "2026-11-24"],
    ["note", "rain"],
    ["marks", "a"],
    ["new", ""],
  ] as const;
  expect(changedNames(before, now)).toEqual(["note", "marks", "gone", "new"]);
  expect(changedNames(before, before)).toEqual([]);
});

it("two boxes are not one whose value looks like both", () => {
  expect(
    changedNames(
      [
        ["a", "x"],
        ["a", "y"],
      ],
      [["a", "x,y"]],
    ),
  ).toEqual(["a"]);
});
