import Link from "next/link";
import type { RosterPage } from "@/lib/report/page-model";
import { Verdict } from "../glyph/glyph";
import { Strip } from "../strip/strip";
import styles from "./roster.module.css";

/** What has been proved since the viewer last pressed "seen". */
export function ProvedTable({ proved }: { readonly proved: RosterPage["proved"] }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable without a pointer.
    <section className={styles.scroll} tabIndex={0} aria-label={proved.margin}>
      <table className={styles.proved}>
        <thead>
          <tr>
            {proved.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {proved.rows.map((row) => (
            <tr key={row.href}>
              <td>
                <Verdict glyph={row.glyph} word={row.word} />
              </td>
              <th scope="row">
                <Link href={row.href}>
                  <strong>{row.student}</strong> {row.fundamental}
                </Link>
              </th>
              <td>{row.levels}</td>
              <td className={styles[row.tone]}>{row.size}</td>
              <td>{row.days}</td>
              <td>{row.sure}</td>
              <td>{row.position}</td>
              <td>
                <Strip model={row.strip} width={200} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
