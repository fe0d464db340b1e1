"use client";

import { type ClipboardEvent, type FocusEvent, type KeyboardEvent, type RefObject, useRef } from "react";
import { flushSync } from "react-dom";
import { cellAt, cellOf, enterCell, placeOf, tickBox } from "./cell-inputs";
import type { DeskModel } from "./desk-model";
import { fillWords } from "./fill-words";
import { keyMove } from "./key-move";
import { landBlock } from "./land-block";
import { letterKey } from "./letter-key";
import { nextCell } from "./next-cell";
import { type PastedBlock, pastedBlock } from "./pasted-block";
import type { useGrid } from "./use-grid";

type Grid = ReturnType<typeof useGrid>;

function caretOf(cell: HTMLInputElement): { readonly length: number; readonly from: number; readonly to: number } {
  return { length: cell.value.length, from: cell.selectionStart ?? 0, to: cell.selectionEnd ?? 0 };
}

/** What the grid listens to: keys and pastes within a cell, arriving in one and leaving it. */
export function useGridKeys(model: DeskModel, desk: RefObject<HTMLElement | null>, grid: Grid) {
  const { state, order } = grid;
  // Whether something was typed since the grid itself wrote a cell: the browser's own undo is for that.
  const typed = useRef<"yes" | "no">("no");

  const shape = () => ({
    swings: state.shown,
    columns: state.rest === "open" ? order.length : model.first,
    first: model.first,
  });
  const write: Grid["write"] = (cells, message) => {
    grid.write(cells, message);
    typed.current = "no";
  };

  const openRest = (cell: HTMLInputElement): void => {
    if (model.rest === null || !desk.current) return;
    grid.openRest();
    enterCell(cellAt(desk.current, { swing: placeOf(cell).swing, column: model.first }));
  };

  const letter = (event: KeyboardEvent, cell: HTMLInputElement): void => {
    const { length, from, to } = caretOf(cell);
    const effect = letterKey(event.key, cell.value, length > 0 && to - from === length ? "selected" : "typed");
    if (effect === null) return;
    event.preventDefault();
    if (effect.kind === "rest") openRest(cell);
    if (effect.kind === "write" && effect.text !== cell.value) {
      write([{ cell, text: effect.text }], "");
      cell.select();
    }
    if (effect.kind === "keep") {
      flushSync(() => grid.settle());
      const box = desk.current?.querySelector<HTMLInputElement>(`input[name="${CSS.escape(`ok.${cell.name}`)}"]`);
      if (box) tickBox(box);
    }
  };

  const onKeyDown = (event: KeyboardEvent): void => {
    const cell = cellOf(event.target);
    if (!cell || !desk.current || event.nativeEvent.isComposing) return;
    const ctrl = event.ctrlKey || event.metaKey;
    if (ctrl && !event.shiftKey && event.key.toLowerCase() === "z" && state.undoable > 0 && typed.current === "no") {
      event.preventDefault();
      grid.undo();
      return;
    }
    const move = keyMove({ key: event.key, shift: event.shiftKey, ctrl, alt: event.altKey, ...caretOf(cell) });
    if (move !== null) {
      const next = nextCell(grid.layout(), shape(), placeOf(cell), move);
      // Enter never sends the form from within the grid; an arrow that leads nowhere is left to the text.
      if (next !== null || event.key === "Enter") event.preventDefault();
      if (next !== null) enterCell(cellAt(desk.current, next));
      return;
    }
    if (state.letters === "on" && !ctrl && !event.altKey) letter(event, cell);
  };

  /** Lays a block down from a cell on; what can't be taken whole is refused in words. */
  const land = (root: HTMLElement, cell: HTMLInputElement, block: PastedBlock): void => {
    const { swing, column } = placeOf(cell);
    const turned = grid.layout() === "table-columns";
    const columns = shape().columns;
    const at = turned
      ? { line: column, place: swing, lines: columns, places: model.rows.length }
      : { line: swing, place: column, lines: model.rows.length, places: columns };
    const there = (line: number, place: number) =>
      cellAt(root, turned ? { swing: place, column: line } : { swing: line, column: place });
    const landed = landBlock(block, at, (line, place) => there(line, place)?.value ?? "");
    if (landed.kind === "blank") grid.set({ message: model.words.pastedBlank });
    else if (landed.kind === "overflow") {
      const { lines, places } = landed;
      const gaps = { lines, places, roomLines: at.lines - at.line, roomPlaces: at.places - at.place };
      const more = columns < order.length ? ` ${model.words.overflowRest}` : "";
      grid.set({ message: fillWords(model.words.overflow, gaps) + more });
    } else {
      const cells = landed.cells.flatMap(({ line, place, text }) => {
        const found = there(line, place);
        return found ? [{ cell: found, text }] : [];
      });
      const { changed, blank } = landed;
      write(cells, fillWords(model.words.pasted, { filled: cells.length, changed, blank }));
      cell.select();
    }
  };

  const onPaste = (event: ClipboardEvent): void => {
    const cell = cellOf(event.target);
    const block = cell && pastedBlock(event.clipboardData.getData("text/plain"));
    if (!cell || !block || !desk.current) return;
    event.preventDefault();
    land(desk.current, cell, block);
  };

  const onFocus = (event: FocusEvent): void => {
    const cell = cellOf(event.target);
    if (!cell) return;
    // The focus is told once more when the scripts take over the page: what was typed until then must not be typed over.
    if (cell.value === (state.texts[cell.name] ?? cell.defaultValue)) cell.select();
    grid.set({ where: placeOf(cell) });
  };

  const onBlur = (event: FocusEvent): void => {
    const cell = cellOf(event.target);
    if (cell && cell.value !== (state.texts[cell.name] ?? cell.defaultValue)) grid.settle();
  };

  // What the grid wrote itself is heard too, and forgotten right after by `write`.
  const onInput = (): void => {
    typed.current = "yes";
  };

  return { onKeyDown, onPaste, onFocus, onBlur, onInput };
}
