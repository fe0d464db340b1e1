import type { GridMove } from "./next-cell";

/** A key as it was pressed, and where the caret stands in the cell. */
export interface PressedKey {
  readonly key: string;
  readonly shift: boolean;
  readonly ctrl: boolean;
  readonly alt: boolean;
  /** Length of what stands in the cell, and the selected stretch of it. */
  readonly length: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The move that a key asks for; null: the key is the browser's.
 *
 * Left and right belong to the text until its edge; where all of it is selected, as on arriving in a cell, both edges
 * are reached. Tab stays the browser's.
 */
export function keyMove({ key, shift, ctrl, alt, length, from, to }: PressedKey): GridMove | null {
  if (alt) return null;
  if (ctrl) return key === "Home" ? "start" : key === "End" ? "end" : null;
  if (key === "Enter") return shift ? "back" : "on";
  if (shift) return null;
  const whole = from === 0 && to === length;
  switch (key) {
    case "ArrowUp":
      return "up";
    case "ArrowDown":
      return "down";
    case "ArrowLeft":
      return whole || (from === 0 && to === 0) ? "left" : null;
    case "ArrowRight":
      return whole || (from === length && to === length) ? "right" : null;
    default:
      return null;
  }
}
