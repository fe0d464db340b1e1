import Link from "next/link";
import { type ReactNode, useId } from "react";
import type { TableModel } from "@/lib/report/page-model";
import styles from "./table.module.css";

/** A table of finished cells in a region of its own that scrolls sideways, with the keyboard too. */
export function Table({
  model,
  drawn,
}: {
  readonly model: TableModel;
  /** One more column of drawings, a cell a row. */
  readonly drawn?: { readonly label: string; readonly cells: readonly ReactNode[] };
}) {
  const id = useId();
  const region = (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable without a pointer.
    <section className={styles.scroll} tabIndex={0} aria-labelledby={id}>
      <table className={styles.table}>
        <caption id={id}>{model.caption}</caption>
        <thead>
          <tr>
            {model.columns.map((column) => (
              <th key={column.label} scope="col" className={column.align === "end" ? styles.end : undefined}>
                {column.label}
              </th>
            ))}
            {drawn ? <th scope="col">{drawn.label}</th> : null}
          </tr>
        </thead>
        <tbody>
          {model.rows.map((row, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows of a finished table never move.
            <tr key={at} className={row.tone === "quiet" ? styles.quiet : undefined}>
              {row.cells.map((cell, place) => {
                const column = model.columns[place];
                const key = column?.label ?? String(place);
                const align = column?.align === "end" ? styles.end : undefined;
                return place === 0 ? (
                  <th key={key} scope="row" className={align}>
                    {row.href === undefined ? (
                      <span className={styles.words}>{cell}</span>
                    ) : (
                      <Link prefetch={false} href={row.href} className={`${styles.words} ${styles.link}`}>
                        {cell}
                      </Link>
                    )}
                  </th>
                ) : (
                  <td key={key} className={align}>
                    {row.ways?.[place] ? (
                      <Link prefetch={false} href={row.ways[place]} className={`${styles.words} ${styles.link}`}>
                        {cell}
                      </Link>
                    ) : (
                      <span className={styles.words}>{cell}</span>
                    )}
                  </td>
                );
              })}
              {drawn ? <td className={styles.drawn}>{drawn.cells[at]}</td> : null}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
  return (
    <>
      {region}
      {model.download ? (
        <p className={styles.download}>
          <a href={model.download.href} aria-describedby={id}>
            {model.download.label}
          </a>
        </p>
      ) : null}
    </>
  );
}
