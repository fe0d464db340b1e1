import { Fragment } from "react";
import type { Arrangement } from "@/lib/report/grid-model";
import { type CellNote, cellNote, type DeskModel, type Drawings } from "./desk-model";
import { fillWords } from "./fill-words";
import styles from "./grid-table.module.css";

/** What one table of the grid shows, and how things stand in it. */
export interface TableProps {
  readonly model: DeskModel;
  readonly caption: string;
  readonly heads: Drawings;
  readonly arrangement: Arrangement;
  /** Columns of the model in the order of the screen, and the place of the first of them among all. */
  readonly order: readonly number[];
  readonly from: number;
  readonly shown: number;
  /** What stands in cells that were left, and which values were said to be right. */
  readonly texts: Readonly<Record<string, string>>;
  readonly ticked: Readonly<Record<string, string>>;
  /** What stood in the cells when the lines were turned. */
  readonly kept: Readonly<Record<string, string>>;
  readonly onTick: (name: string, value: string) => void;
}

interface Placed {
  readonly swing: number;
  readonly place: number;
  readonly column: number;
}

function partsOf({ model, texts }: TableProps, { swing, column: at }: Placed) {
  const column = model.columns[at];
  const cell = model.rows[swing]?.cells[at];
  if (!column || !cell) throw new Error(`no cell of swing ${swing} and column ${at}`);
  const text = texts[cell.name] ?? cell.value;
  return { column, cell, text, note: cellNote(cell, column, text) };
}

/** A page may hold several grids: the name of the column's first cell tells its sign from theirs. */
function signId(model: TableProps["model"], column: number): string {
  return `sign-${model.rows[0]?.cells[column]?.name}`;
}

function later(props: TableProps, swing: number): string | undefined {
  return swing < props.shown ? undefined : styles.later;
}

function Cell(props: TableProps & { readonly at: Placed }) {
  const { model, at, kept, arrangement } = props;
  const { column, cell, note } = partsOf(props, at);
  const described = [signId(model, at.column), note === null ? "" : `error-${cell.name}`].join(" ").trim();
  return (
    <td className={later(props, at.swing)}>
      <span className={styles.line} aria-hidden="true">
        <b>{arrangement === "swings" ? column.label : model.rows[at.swing]?.label}</b>
        <span>{column.unit}</span>
        {arrangement === "swings" ? <span>{column.sign}</span> : null}
        {column.mark === "" ? null : <i>{column.mark}</i>}
      </span>
      <input
        id={`field-${cell.name}`}
        name={cell.name}
        className={note?.asked === "yes" ? styles.asked : styles.cell}
        defaultValue={kept[cell.name] ?? cell.value}
        data-swing={at.swing}
        data-place={at.place}
        aria-label={cell.label}
        aria-invalid={note === null ? undefined : true}
        aria-describedby={described}
        inputMode="text"
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
      />
    </td>
  );
}

function Note(props: TableProps & { readonly at: Placed; readonly note: CellNote }) {
  const { model, note, ticked } = props;
  const { cell, text } = partsOf(props, props.at);
  const right = (ticked[cell.name] ?? (cell.confirmed === "yes" ? cell.value : null)) === text;
  if (note.asked === "no")
    return (
      <p id={`error-${cell.name}`} className={styles.error}>
        {cell.label}: {note.error}
      </p>
    );
  return (
    <div className={styles.question}>
      <p id={`error-${cell.name}`}>{fillWords(model.words.unusual, { label: cell.label, value: text })}</p>
      <label>
        <input
          key={text}
          type="checkbox"
          name={`ok.${cell.name}`}
          value={text}
          defaultChecked={right}
          onChange={(event) => props.onTick(cell.name, event.target.checked ? text : "")}
        />
        {fillWords(model.words.right, { value: text })}
      </label>
    </div>
  );
}

/** What is said of the cells of one row, under it. */
function Notes(props: TableProps & { readonly cells: readonly Placed[]; readonly span: number }) {
  const noted = props.cells.flatMap((at) => {
    const { note } = partsOf(props, at);
    return note === null ? [] : [{ at, note }];
  });
  if (noted.length === 0) return null;
  return (
    <tr className={styles.notes}>
      <td colSpan={props.span}>
        {noted.map(({ at, note }) => (
          <Note key={`${at.swing} ${at.column}`} {...props} at={at} note={note} />
        ))}
      </td>
    </tr>
  );
}

function Sign({ model, heads, at }: Pick<TableProps, "model" | "heads"> & { readonly at: number }) {
  const column = model.columns[at];
  if (!column) return null;
  return (
    <div className={styles.head}>
      {heads[column.fundamentalId]}
      <span id={signId(model, at)} className={styles.sign}>
        <span>{column.unit}</span> <span>{column.sign}</span>
      </span>
    </div>
  );
}

function Mark({ model, at }: Pick<TableProps, "model"> & { readonly at: number }) {
  const mark = model.columns[at]?.mark ?? "";
  return mark === "" ? null : <span className={styles.mark}>{mark}</span>;
}

function SwingLines(props: TableProps) {
  const { model, order, from, heads } = props;
  return (
    <>
      <thead>
        <tr>
          <th scope="col">{model.swingLabel}</th>
          {order.map((at) => (
            <th key={at} scope="col">
              {model.columns[at]?.label}
              <Mark model={model} at={at} />
            </th>
          ))}
        </tr>
        <tr className={styles.signs}>
          <td>
            <span className="said">{model.words.plusHead}</span>
          </td>
          {order.map((at) => (
            <td key={at}>
              <Sign model={model} heads={heads} at={at} />
            </td>
          ))}
        </tr>
      </thead>
      <tbody>
        {model.rows.map((row, swing) => {
          const cells = order.map((column, i) => ({ swing, place: from + i, column }));
          return (
            <Fragment key={row.label}>
              <tr className={later(props, swing)}>
                <th scope="row">{row.label}</th>
                {cells.map((at) => (
                  <Cell key={at.column} {...props} at={at} />
                ))}
              </tr>
              <Notes {...props} cells={cells} span={order.length + 1} />
            </Fragment>
          );
        })}
      </tbody>
    </>
  );
}

function ColumnLines(props: TableProps) {
  const { model, order, from, heads } = props;
  return (
    <>
      <thead>
        <tr>
          <th scope="col">{model.words.fundamentalHead}</th>
          <th scope="col">{model.words.plusHead}</th>
          {model.rows.map((row, swing) => (
            <th key={row.label} scope="col" className={later(props, swing)}>
              {row.label}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {order.map((column, i) => {
          const cells = model.rows.map((_, swing) => ({ swing, place: from + i, column }));
          return (
            <Fragment key={column}>
              <tr>
                <th scope="row">
                  {model.columns[column]?.label}
                  <span className={styles.checkpoint}>{model.columns[column]?.checkpoint}</span>
                  <Mark model={model} at={column} />
                </th>
                <td className={styles.beside}>
                  <Sign model={model} heads={heads} at={column} />
                </td>
                {cells.map((at) => (
                  <Cell key={at.swing} {...props} at={at} />
                ))}
              </tr>
              <Notes {...props} cells={cells} span={model.rows.length + 2} />
            </Fragment>
          );
        })}
      </tbody>
    </>
  );
}

/** One table of the grid; where it is narrow, each of its cells is a line. */
export function GridTable(props: TableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable without a pointer.
    <section className={styles.scroll} tabIndex={0} aria-label={props.caption}>
      <table className={styles[props.arrangement]}>
        <caption>{props.caption}</caption>
        {props.arrangement === "swings" ? <SwingLines {...props} /> : <ColumnLines {...props} />}
      </table>
    </section>
  );
}
