import Link from "next/link";
import type { ProvedRow, RosterPage } from "@/lib/report/page-model";
import { Verdict } from "../glyph/glyph";
import { drawStrip } from "../strip/draw-strip";
import { Strip } from "../strip/strip";
import styles from "./roster.module.css";
import blocks from "./roster-blocks.module.css";

type Proved = RosterPage["proved"];

/** The finished words of a row between its name and its strip, in the order of the columns. */
function cellsOf(row: ProvedRow) {
  return [
    { text: row.levels, style: styles.number },
    { text: row.size, style: `${styles.number} ${styles[row.tone]}` },
    { text: row.days, style: styles.days },
    { text: row.sure, style: undefined },
    { text: row.position, style: undefined },
  ];
}

/** What has been proved since the viewer last pressed "seen". */
export function ProvedTable({ proved }: { readonly proved: Proved }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable without a pointer.
    <section className={`${styles.scroll} ${styles.wideProved}`} tabIndex={0} aria-label={proved.heading}>
      <table className={styles.proved}>
        <thead>
          <tr>
            {proved.columns.map((column, at) => (
              <th key={column} scope="col" className={at === 2 || at === 3 ? styles.number : undefined}>
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
                <Link prefetch={false} href={row.href}>
                  <strong>{row.student}</strong> {row.fundamental}
                </Link>
              </th>
              {cellsOf(row).map((cell, at) => (
                <td key={proved.columns[at + 2]} className={cell.style}>
                  {cell.text}
                </td>
              ))}
              <td>
                <Strip drawn={drawStrip(row.strip, 200)} label={row.strip.summary} width={200} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The same on a phone: a block a change, every figure beside its name. */
export function ProvedBlocks({ proved }: { readonly proved: Proved }) {
  return (
    <ul className={`${blocks.blocks} ${blocks.proved}`}>
      {proved.rows.map((row) => (
        <li key={row.href}>
          <div className={blocks.line}>
            <Link prefetch={false} href={row.href} className={blocks.open}>
              <strong>{row.student}</strong> {row.fundamental}
            </Link>
            <Verdict glyph={row.glyph} word={row.word} />
          </div>
          <Strip drawn={drawStrip(row.strip, 300)} label={row.strip.summary} width={300} />
          <dl className={blocks.pairs}>
            {cellsOf(row).map((cell, at) => (
              <div key={proved.columns[at + 2]}>
                <dt>{proved.columns[at + 2]}</dt>
                <dd className={at === 1 ? blocks[row.tone] : undefined}>{cell.text}</dd>
              </div>
            ))}
          </dl>
        </li>
      ))}
    </ul>
  );
}
