"use client";

import Link from "next/link";
import { Glyph } from "../glyph/glyph";
import { EmptyStrip, Strip } from "../strip/strip";
import { type DrawnRow, hasShape } from "./drawn-rows";
import styles from "./roster.module.css";

function Cell({ cell, none }: { readonly cell: DrawnRow["cells"][number]; readonly none: string }) {
  if (cell === null)
    return (
      <td className={styles.track}>
        <EmptyStrip />
        <span className="said">{none}</span>
      </td>
    );
  return (
    <td className={styles.track}>
      <Link prefetch={false} href={cell.href} className={styles.cell}>
        <Strip drawn={cell.inTable} label={cell.label} />
        {hasShape(cell) ? (
          <span className={styles.shape}>
            <Glyph glyph={cell.glyph} size={16} />
          </span>
        ) : null}
      </Link>
    </td>
  );
}

function InHand({ row }: { readonly row: DrawnRow }) {
  const { inHand } = row;
  if (inHand === null) return <span className={styles.detail}>{row.places}</span>;
  return (
    <>
      <span className={styles.inHandName}>
        {inHand.glyph === "open" ? null : <Glyph glyph={inHand.glyph} size={16} />}
        {inHand.name}
      </span>
      <span className={styles.place}>{inHand.position}</span>
      <span className={inHand.glyph === "open" ? "said" : styles.detail}>{inHand.word}</span>
    </>
  );
}

/**
 * The body of the roster's table. A browser is sent its rows as they are, not each of their thousands of elements anew: that
 * was most of the page and of the work on it.
 */
export function RosterTableRows({ rows, none }: { readonly rows: readonly DrawnRow[]; readonly none: string }) {
  return rows.map((row) => (
    <tr key={row.studentId}>
      <th scope="row">
        <Link prefetch={false} href={row.href}>
          {row.alias}
        </Link>{" "}
        <span className={styles.aside}>{row.detail}</span>
        {row.away === "" ? null : <span className={styles.detail}>{row.away}</span>}
      </th>
      <td className={styles.inHand}>
        <InHand row={row} />
        {row.workNote ? <span className={styles.detail}>{row.workNote}</span> : null}
      </td>
      {row.cells.map((cell, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its column's, and the columns stand still.
        <Cell key={at} cell={cell} none={none} />
      ))}
      <td className={styles.end}>{row.contact}</td>
      <td className={styles.end}>{row.lastSession}</td>
    </tr>
  ));
}
