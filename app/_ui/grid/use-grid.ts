"use client";

import { type RefObject, useRef, useState } from "react";
import { flushSync } from "react-dom";
import type { Arrangement } from "@/lib/report/grid-model";
import {
  allCells,
  cellAt,
  cellNamed,
  cellTexts,
  enterCell,
  keepTyped,
  type WrittenCell,
  writeCell,
} from "./cell-inputs";
import { countCells } from "./count-cells";
import { cellNote, columnOrder, type DeskModel } from "./desk-model";
import { fillWords } from "./fill-words";
import type { CellPlace, GridLayout } from "./next-cell";

type Texts = Readonly<Record<string, string>>;

function textsOf(model: DeskModel, texts: Texts): readonly (readonly string[])[] {
  return model.rows.map((row) => row.cells.map((cell) => texts[cell.name] ?? cell.value));
}

/** What the server sent, so that the grid begins anew when a refused form comes back. */
function stampOf(model: DeskModel): string {
  return model.rows.flatMap((row) => row.cells.map((cell) => `${cell.value}|${cell.error}`)).join("\n");
}

function startOf(model: DeskModel) {
  return {
    stamp: stampOf(model),
    arrangement: model.arrangement,
    letters: model.letters,
    rest: model.rest?.open === "no" ? ("shut" as const) : ("open" as const),
    shown: model.shown,
    where: null as CellPlace | null,
    texts: {} as Texts,
    ticked: {} as Texts,
    kept: {} as Texts,
    count: countCells(textsOf(model, {})),
    message: "",
    undoable: 0,
  };
}

/** How the grid stands. The cells themselves are plain fields: what is typed lives in the page, not here. */
export type GridState = Omit<ReturnType<typeof startOf>, "rest" | "arrangement" | "letters"> & {
  readonly rest: "open" | "shut";
  readonly arrangement: Arrangement;
  readonly letters: "on" | "off";
};

/** State of the grid and what can be done to it. */
export function useGrid(
  model: DeskModel,
  desk: RefObject<HTMLElement | null>,
  keep: ((data: FormData) => Promise<void>) | undefined,
) {
  const [state, setState] = useState<GridState>(() => startOf(model));
  const bar = useRef<HTMLDivElement>(null);
  const past = useRef<(readonly WrittenCell[])[]>([]);
  const set = (change: Partial<GridState>): void => setState((now) => ({ ...now, ...change }));
  if (state.stamp !== stampOf(model))
    setState({ ...startOf(model), arrangement: state.arrangement, letters: state.letters });

  const order = columnOrder(model, state.arrangement);
  const remember = (name: string, value: string): void => {
    const data = new FormData();
    data.set(name, value);
    // What can't be kept now is only liked less well next time.
    keep?.(data).catch(() => {});
  };

  /** Takes note of what stands in the cells: questions, the count, and swings that are to be shown. */
  const settle = (): void => {
    const root = desk.current;
    if (!root) return;
    const texts = cellTexts(root);
    const rows = textsOf(model, texts);
    const used = rows.findLastIndex((row) => row.some((text) => text.trim() !== "")) + 1;
    setState((now) => ({ ...now, texts, count: countCells(rows), shown: Math.max(now.shown, used) }));
  };

  /** Writes cells as if typed, to be undone together. */
  const write = (
    cells: readonly { readonly cell: HTMLInputElement; readonly text: string }[],
    message: string,
  ): void => {
    past.current.push(cells.map(({ cell, text }) => writeCell(cell, text)));
    set({ message, undoable: past.current.length });
    settle();
  };

  return {
    state,
    order,
    bar,
    set,
    settle,
    write,
    askedCells: model.rows
      .flatMap((row) => row.cells.map((cell, i) => ({ cell, column: model.columns[i] })))
      .filter(
        ({ cell, column }) => column && cellNote(cell, column, state.texts[cell.name] ?? cell.value)?.asked === "yes",
      ).length,
    table: {
      arrangement: state.arrangement,
      shown: state.shown,
      texts: state.texts,
      ticked: state.ticked,
      kept: state.kept,
      onTick: (name: string, value: string): void =>
        setState((now) => ({ ...now, ticked: { ...now.ticked, [name]: value } })),
    },
    /** How the cells lie on the screen just now. */
    layout(): GridLayout {
      const lines = bar.current && getComputedStyle(bar.current).getPropertyValue("--cell-lines").trim() === "yes";
      return `${lines ? "lines" : "table"}-${state.arrangement}`;
    },
    turn(arrangement: Arrangement): void {
      if (arrangement === state.arrangement || !desk.current) return;
      const texts = cellTexts(desk.current);
      flushSync(() => set({ arrangement, kept: texts, texts, where: null }));
      for (const cell of allCells(desk.current)) keepTyped(cell);
      set({ kept: {} });
      remember("arrangement", arrangement);
    },
    setLetters(letters: "on" | "off"): void {
      set({ letters });
      remember("letters", letters);
    },
    /** Opens the rest, and waits until its cells can be gone to. */
    openRest(): void {
      flushSync(() => set({ rest: "open" }));
    },
    /** Follows the reader, but stays open while something typed would go out of sight. */
    toggleRest(details: HTMLDetailsElement): void {
      const held = [...details.querySelectorAll<HTMLInputElement>("input[data-swing]")].some(
        (cell) => cell.value !== "",
      );
      const kept = !details.open && held;
      if (kept) details.open = true;
      set({ rest: details.open ? "open" : "shut", ...(kept ? { message: model.words.restStays } : {}) });
    },
    addSwing(): void {
      const swing = state.shown;
      flushSync(() => set({ shown: Math.min(swing + 1, model.rows.length) }));
      if (desk.current) enterCell(cellAt(desk.current, { swing, column: 0 }));
    },
    /** Puts back what the last paste or letter wrote, except where something else was typed since. */
    undo(): void {
      const last = past.current.pop();
      const root = desk.current;
      if (!last || !root) return;
      const found = last.flatMap(({ name, before, after }) => {
        const cell = cellNamed(root, name);
        return cell && cell.value === after ? [{ cell, before }] : [];
      });
      for (const { cell, before } of found) writeCell(cell, before);
      const message = fillWords(model.words.undone, { undone: found.length, kept: last.length - found.length });
      set({ message, undoable: past.current.length });
      settle();
    },
  };
}
