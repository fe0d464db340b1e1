import Link from "next/link";
import type { RosterCell, RosterPage, RosterRow } from "@/lib/report/page-model";
import { Verdict } from "../glyph/glyph";
import { Strip } from "../strip/strip";
import styles from "./roster-blocks.module.css";

type Evidence = RosterPage["evidence"];

/** The cell of the fundamental in hand, if it is among the columns. */
function cellInHand(evidence: Evidence, row: RosterRow): RosterCell | null {
  const { inHand } = row;
  if (inHand === null) return null;
  const at = evidence.columns.findIndex((column) =>
    inHand.fundamentalId === undefined ? column.name === inHand.name : column.id === inHand.fundamentalId,
  );
  return row.cells[at] ?? null;
}

function InHand({ evidence, row }: { readonly evidence: Evidence; readonly row: RosterRow }) {
  const cell = cellInHand(evidence, row);
  if (row.inHand === null) return null;
  return (
    <>
      <p>
        <strong>{row.inHand.name}</strong> {row.inHand.position}
      </p>
      <Verdict glyph={row.inHand.glyph} word={row.inHand.word} size={16} />
      {cell === null ? null : <Strip model={cell.strip} width={300} />}
    </>
  );
}

/** The roster on a phone: a block a student, the fundamental in hand first, the others one step away. */
export function RosterBlocks({ evidence }: { readonly evidence: Evidence }) {
  return (
    <ul className={styles.blocks}>
      {evidence.rows.map((row) => (
        <li key={row.studentId}>
          <h3>
            <Link prefetch={false} href={row.href} className={styles.open}>
              {row.alias}
            </Link>
          </h3>
          <p className={styles.detail}>
            {row.detail} · {row.away === "" ? row.lastSession : row.away}
          </p>
          <InHand evidence={evidence} row={row} />
          <details>
            <summary className={styles.open}>{evidence.margin}</summary>
            <ul className={styles.cells}>
              {evidence.columns.map((column, at) => {
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
                    <Strip model={cell.strip} />
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
