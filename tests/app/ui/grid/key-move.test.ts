import { describe, expect, it } from "vitest";
import { keyMove, type PressedKey } from "@/app/_ui/grid/key-move";

const press = (key: string, more: Partial<PressedKey> = {}) =>
  keyMove({ key, shift: false, ctrl: false, alt: false, length: 2, from: 2, to: 2, ...more });

describe("what a key asks for", () => {
  it("Enter goes on, with Shift back; up and down always move", () => {
    expect([press("Enter"), press("Enter", { shift: true }), press("ArrowUp"), press("ArrowDown")]).toEqual([
      "on",
      "back",
      "up",
      "down",
    ]);
  });

  it("left and right belong to the text until its edge: 88 with the caret behind it goes right, not left", () => {
    expect([press("ArrowRight"), press("ArrowLeft")]).toEqual(["right", null]);
    expect([press("ArrowRight", { from: 0, to: 0 }), press("ArrowLeft", { from: 0, to: 0 })]).toEqual([null, "left"]);
    expect([press("ArrowRight", { from: 1, to: 1 }), press("ArrowLeft", { from: 1, to: 1 })]).toEqual([null, null]);
  });

  it("in an empty cell, and where all is selected as on arriving, both edges are reached", () => {
    for (const caret of [
      { from: 0, to: 2 },
      { length: 0, from: 0, to: 0 },
    ])
      expect([press("ArrowRight", caret), press("ArrowLeft", caret)]).toEqual(["right", "left"]);
  });

  it("Home and End move only with Ctrl; selecting with Shift, Alt and Tab stay the browser's", () => {
    expect([press("Home", { ctrl: true }), press("End", { ctrl: true })]).toEqual(["start", "end"]);
    for (const key of ["Home", "End", "Tab", "a", "Escape"]) expect([key, press(key)]).toEqual([key, null]);
    expect([
      press("ArrowRight", { shift: true }),
      press("ArrowLeft", { alt: true }),
      press("z", { ctrl: true }),
    ]).toEqual([null, null, null]);
  });
});
