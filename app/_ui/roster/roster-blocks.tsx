import Link from "next/link";
import type { RosterPage } from "@/lib/report/page-model";
import { Verdict } from "../glyph/glyph";
import { Strip } from "../strip/strip";
import styles from "./roster.module.css";

/** The roster on a phone: a block a student, the fundamental in hand first, the others one step away. */
export function RosterBlocks({ evidence }: { readonly evidence: RosterPage["evidence"] }) {
  return (
    <ul className={styles.blocks}>
      {evidence.rows.map((row) => (
        <li key={row.studentId}>
          <h3>
            <Link href={row.href}>{row.alias}</Link>
          </h3>
          <p className={styles.detail}>{row.away === "" ? `${row.detail} · ${row.lastSession}` : row.away}</p>
          {row.inHand === null ? null : (
            <p className={styles.inHandWords}>
              <strong>{row.inHand.name}</strong> {row.inHand.position}
              <Verdict glyph={row.inHand.glyph} word={row.inHand.word} size={16} />
            </p>
          )}
          <details>
            <summary>{evidence.margin}</summary>
            <ul className={styles.cells}>
              {evidence.columns.map((column, at) => {
                const cell = row.cells[at];
                return cell ? (
                  <li key={column.id}>
                    <Link href={cell.href}>{column.name}</Link>
                    <Strip model={cell.strip} />
                    <span className={styles.detail}>{cell.position}</span>
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
