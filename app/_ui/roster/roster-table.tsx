import Link from "next/link";
import type { RosterPage } from "@/lib/report/page-model";
import type { RosterHead } from "@/lib/report/roster-model";
import type { DrawnRow } from "./drawn-rows";
import styles from "./roster.module.css";
import heads from "./roster-head.module.css";
import { RosterTableRows } from "./roster-table-rows";
import { RowKeys } from "./row-keys";

/** A column's head that puts the rows in its order. */
function Head({ head, end }: { readonly head: RosterHead; readonly end?: "yes" }) {
  return (
    <th scope="col" aria-sort={head.sorted ?? undefined} className={end === "yes" ? styles.end : undefined}>
      <Link prefetch={false} href={head.href} className={heads.head}>
        {head.label}
        <span className="said">, {head.explains}</span>
      </Link>
    </th>
  );
}

/** The roster as one table; "in band" lines up across a row. */
export function RosterTable({
  evidence,
  rows,
}: {
  readonly evidence: RosterPage["evidence"];
  readonly rows: readonly DrawnRow[];
}) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable without a pointer.
    <section className={`${styles.scroll} ${styles.wide}`} tabIndex={0} aria-label={evidence.heading}>
      <RowKeys>
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
              <Head head={evidence.heads.student} />
              <Head head={evidence.heads.inHand} />
              {evidence.columns.map((column) => (
                <th key={column.id} scope="col" className={styles.column}>
                  {column.name}
                  <span className={styles.band}>{column.band}</span>
                </th>
              ))}
              <th scope="col" className={styles.end}>
                {evidence.contactLabel}
              </th>
              <Head head={evidence.heads.last} end="yes" />
            </tr>
          </thead>
          <tbody>
            <RosterTableRows rows={rows} none={evidence.notMeasured} />
          </tbody>
        </table>
      </RowKeys>
    </section>
  );
}
