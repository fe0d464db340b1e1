import type { CellPlace } from "./next-cell";

/** A written cell: what stood in it and what stands now. */
export interface WrittenCell {
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

/** The cell that an event came from; null: it came from something else. */
export function cellOf(target: EventTarget): HTMLInputElement | null {
  return target instanceof HTMLInputElement && target.dataset.swing !== undefined ? target : null;
}

export function placeOf(cell: HTMLInputElement): CellPlace {
  return {
    swing: Number.parseInt(cell.dataset.swing ?? "", 10),
    column: Number.parseInt(cell.dataset.place ?? "", 10),
  };
}

export function cellAt(desk: HTMLElement, { swing, column }: CellPlace): HTMLInputElement | null {
  return desk.querySelector<HTMLInputElement>(`input[data-swing="${swing}"][data-place="${column}"]`);
}

export function cellNamed(desk: HTMLElement, name: string): HTMLInputElement | null {
  return allCells(desk).find((cell) => cell.name === name) ?? null;
}

/** Every cell of the grid, shown or not. */
export function allCells(desk: HTMLElement): readonly HTMLInputElement[] {
  return [...desk.querySelectorAll<HTMLInputElement>("input[data-swing]")];
}

/** What stands in every cell, by name. */
export function cellTexts(desk: HTMLElement): Readonly<Record<string, string>> {
  return Object.fromEntries(allCells(desk).map((cell) => [cell.name, cell.value]));
}

const setValue = (cell: HTMLInputElement, text: string): void =>
  // The prototype's own setter, so that the framework sees a change too.
  Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set?.call(cell, text);

/** From now on the cell counts as typed: a new page beneath it leaves what stands in it. */
export function keepTyped(cell: HTMLInputElement): void {
  setValue(cell, cell.value);
}

/** Writes a cell as if it had been typed: whoever listens to the form hears of it. */
export function writeCell(cell: HTMLInputElement, text: string): WrittenCell {
  const before = cell.value;
  setValue(cell, text);
  cell.dispatchEvent(new Event("input", { bubbles: true }));
  return { name: cell.name, before, after: text };
}

/** Ticks a box as if by hand. */
export function tickBox(box: HTMLInputElement): void {
  if (!box.checked) box.click();
}

/** Goes to a cell with all of it selected, so that typing replaces it and arrows move on. */
export function enterCell(cell: HTMLInputElement | null): void {
  cell?.focus();
  cell?.select();
}
