"use client";

import { useRef } from "react";
import { columnOrder, type DeskModel, type Drawings } from "./desk-model";
import { fillWords } from "./fill-words";
import styles from "./grid.module.css";
import { GridTable } from "./grid-table";
import { KeyHelp } from "./key-help";
import { useGrid } from "./use-grid";
import { useGridKeys } from "./use-grid-keys";

interface Props {
  readonly model: DeskModel;
  /** The drawings of the heads, and the same once more for the line that says where one is. */
  readonly heads: Drawings;
  readonly aside: Drawings;
  /** Keeps how the viewer likes the grid. */
  readonly keep?: (data: FormData) => Promise<void>;
}

/** Where one is, what plus means there, and how far one has come; it stays in sight while the eyes go to the film and back. */
function Bar({ model, aside, grid }: Pick<Props, "model" | "aside"> & { readonly grid: ReturnType<typeof useGrid> }) {
  const { state, order } = grid;
  const column = state.where === null ? undefined : model.columns[order[state.where.column] ?? -1];
  return (
    <div className={styles.bar} ref={grid.bar}>
      {column && state.where ? (
        <>
          {aside[column.fundamentalId] ? (
            <span className={styles.picture} aria-hidden="true">
              {aside[column.fundamentalId]}
            </span>
          ) : null}
          <p className={styles.where}>
            <b>
              {fillWords(model.words.where, { name: column.label, swing: model.rows[state.where.swing]?.label ?? "" })}
            </b>{" "}
            <span>{column.unit}</span> <span>{column.sign}</span>
          </p>
        </>
      ) : (
        <p className={styles.where}>{model.words.nowhere}</p>
      )}
      <p className={styles.count} aria-live="polite">
        {state.count.begun === 0 ? null : fillWords(model.words.count, { ...state.count })}
      </p>
    </div>
  );
}

function Lines({ model, grid }: Pick<Props, "model"> & { readonly grid: ReturnType<typeof useGrid> }) {
  const { words } = model;
  return (
    <fieldset className={styles.lines}>
      <legend>{words.arrangement}</legend>
      {(["swings", "columns"] as const).map((arrangement) => (
        <button
          key={arrangement}
          type="button"
          className="say"
          aria-pressed={grid.state.arrangement === arrangement}
          onClick={() => grid.turn(arrangement)}
        >
          {words.arrange[arrangement]}
        </button>
      ))}
    </fieldset>
  );
}

function Rest({ model, grid, heads }: Omit<Props, "keep" | "aside"> & { readonly grid: ReturnType<typeof useGrid> }) {
  const { state, order } = grid;
  if (model.rest === null) return null;
  return (
    <details
      className={styles.rest}
      open={state.rest === "open"}
      onToggle={(event) => grid.toggleRest(event.currentTarget)}
    >
      <summary>{model.rest.summary}</summary>
      <GridTable
        key={state.arrangement}
        {...grid.table}
        model={model}
        heads={heads}
        caption={model.rest.caption}
        order={order.slice(model.first)}
        from={model.first}
      />
    </details>
  );
}

/** The grid of readings with its keys: cells are plain fields of the form round it, so that it works without scripts, too. */
export function GridDesk({ model, heads, aside, keep }: Props) {
  const desk = useRef<HTMLFieldSetElement>(null);
  const grid = useGrid(model, desk, keep);
  const listeners = useGridKeys(model, desk, grid);
  const { state } = grid;
  const { words } = model;
  const full = state.shown >= model.rows.length;
  return (
    <fieldset ref={desk} className={styles.desk} aria-label={model.margin} {...listeners}>
      <div className={styles.tools}>
        <Lines model={model} grid={grid} />
        {model.sheet ? (
          <a className={styles.sheet} href={model.sheet.href}>
            {model.sheet.label}
          </a>
        ) : null}
      </div>
      <Bar model={model} aside={aside} grid={grid} />
      <GridTable
        key={state.arrangement}
        {...grid.table}
        model={model}
        heads={heads}
        caption={model.caption}
        order={columnOrder(model, state.arrangement).slice(0, model.first)}
        from={0}
      />
      <div className={styles.after}>
        <p role="status" className={styles.message}>
          {state.message}
        </p>
        {grid.askedCells > 1 && model.allRight !== null ? (
          <label className={styles.all}>
            <input type="checkbox" name="confirmUnusual" value="yes" defaultChecked={model.allRight === "yes"} />
            {words.allRight}
          </label>
        ) : null}
        {state.undoable > 0 ? (
          <button type="button" className="say" onClick={() => grid.undo()}>
            {words.undo}
          </button>
        ) : null}
        {full ? (
          <p>{fillWords(words.noMoreSwing, { lines: model.rows.length })}</p>
        ) : (
          <button type="button" className={`say ${styles.scripted}`} onClick={() => grid.addSwing()}>
            {words.moreSwing}
          </button>
        )}
      </div>
      <Rest model={model} grid={grid} heads={heads} />
      <KeyHelp words={words} letters={state.letters} onLetters={grid.setLetters} />
    </fieldset>
  );
}
