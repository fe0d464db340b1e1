import Link from "next/link";
import type { RosterCell, RosterPage } from "@/lib/report/page-model";
import { Glyph } from "../glyph/glyph";
import { EmptyStrip, Strip } from "../strip/strip";
import styles from "./roster.module.css";

function Cell({ cell, none }: { readonly cell: RosterCell | null; readonly none: string }) {
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
        <Strip model={cell.strip} end="shape" />
        {cell.glyph === "steady" || cell.glyph === "open" ? null : (
          <span className={styles.shape}>
            <Glyph glyph={cell.glyph} size={16} />
          </span>
        )}
      </Link>
    </td>
  );
}

/** The roster as one table; "in band" lines up across a row. */
export function RosterTable({ evidence }: { readonly evidence: RosterPage["evidence"] }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable without a pointer.
    <section className={`${styles.scroll} ${styles.wide}`} tabIndex={0} aria-label={evidence.heading}>
      <table className={styles.roster}>
        <thead>
          <tr>
            <td colSpan={2} />
            {evidence.groups.map((group) => (
              <th key={group.label} scope="colgroup" colSpan={group.span}>
                {group.label}
              </th>
            ))}
            <td colSpan={2} />
          </tr>
          <tr>
            <th scope="col">{evidence.studentLabel}</th>
            <th scope="col">{evidence.inHandLabel}</th>
            {evidence.columns.map((column) => (
              <th key={column.id} scope="col" className={styles.column}>
                {column.name}
                <span className={styles.band}>{column.band}</span>
              </th>
            ))}
            <th scope="col" className={styles.end}>
              {evidence.contactLabel}
            </th>
            <th scope="col" className={styles.end}>
              {evidence.lastLabel}
            </th>
          </tr>
        </thead>
        <tbody>
          {evidence.rows.map((row) => (
            <tr key={row.studentId}>
              <th scope="row">
                <Link prefetch={false} href={row.href}>
                  {row.alias}
                </Link>{" "}
                <span className={styles.aside}>{row.detail}</span>
                {row.away === "" ? null : <span className={styles.detail}>{row.away}</span>}
              </th>
              <td className={styles.inHand}>
                {row.inHand === null ? null : (
                  <>
                    <span className={styles.inHandName}>
                      <Glyph glyph={row.inHand.glyph} size={16} />
                      {row.inHand.name}
                    </span>
                    <span className={styles.detail}>{row.inHand.position}</span>
                    <span className={row.inHand.glyph === "open" ? "said" : styles.detail}>{row.inHand.word}</span>
                  </>
                )}
              </td>
              {evidence.columns.map((column, at) => (
                <Cell key={column.id} cell={row.cells[at] ?? null} none={evidence.notMeasured} />
              ))}
              <td className={styles.end}>{row.contact}</td>
              <td className={styles.end}>{row.lastSession}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
