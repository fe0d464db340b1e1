"use client";

import Link from "next/link";
import type { RosterPage } from "@/lib/report/page-model";
import { Verdict } from "../glyph/glyph";
import { Strip } from "../strip/strip";
import type { DrawnRow } from "./drawn-rows";
import styles from "./roster-blocks.module.css";

type Columns = RosterPage["evidence"]["columns"];

function InHand({ row }: { readonly row: DrawnRow }) {
  if (row.inHand === null) return row.workNote ? <p>{row.workNote}</p> : null;
  return (
    <>
      <p>
        <strong>{row.inHand.name}</strong> {row.inHand.position}
      </p>
      <p className={styles.line}>
        {row.inHand.glyph === "open" ? (
          <span className={styles.detail}>{row.inHand.word}</span>
        ) : (
          <Verdict glyph={row.inHand.glyph} word={row.inHand.word} size={16} />
        )}
        {row.workNote ? <span className={styles.detail}>{row.workNote}</span> : null}
      </p>
      {row.wide === null ? null : <Strip {...row.wide} width={300} />}
    </>
  );
}

/** The roster on a phone: a block a student, the fundamental in hand first, the others one step away. */
export function RosterBlocks({
  columns,
  rows,
  more,
}: {
  readonly columns: Columns;
  readonly rows: readonly DrawnRow[];
  /** What opens a student's other fundamentals. */
  readonly more: string;
}) {
  return (
    <ul className={styles.blocks}>
      {rows.map((row) => (
        <li key={row.studentId}>
          <div className={styles.line}>
            <h3>
              <Link prefetch={false} href={row.href} className={styles.open}>
                {row.alias}
              </Link>
            </h3>
            <p className={styles.detail}>
              {row.detail} · {row.away === "" ? row.lastSession : row.away}
            </p>
          </div>
          <InHand row={row} />
          <details>
            <summary className={styles.open}>{row.places === "" ? more : row.places}</summary>
            <ul className={styles.cells}>
              {columns.map((column, at) => {
                const cell = row.cells[at];
                return cell ? (
                  <li key={column.id}>
                    <div>
                      <Link prefetch={false} href={cell.href} className={styles.open}>
                        {column.name}
                      </Link>
                      <span className={styles.detail}>
                        {cell.position} · {cell.word}
                      </span>
                    </div>
                    <Strip drawn={cell.inBlock} label={cell.label} />
                  </li>
                ) : null;
              })}
            </ul>
          </details>
        </li>
      ))}
    </ul>
  );
}
