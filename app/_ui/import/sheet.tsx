import { Fragment } from "react";
import type { ImportPage } from "@/lib/report/form-model";
import { Part } from "../part/part";
import styles from "./import.module.css";

type SheetModel = NonNullable<ImportPage["preview"]>["columns"];

/** The sheet as it is read: their word, our word, the unit; queried cells carry the number of their question. */
export function Sheet({ sheet }: { readonly sheet: SheetModel }) {
  return (
    <Part margin={sheet.margin} explains={sheet.explains}>
      <h2>{sheet.heading}</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable without a pointer. */}
      <section className={styles.scroll} tabIndex={0} aria-label={sheet.heading}>
        <table className={styles.sheet}>
          <thead>
            <tr>
              <th scope="col">{sheet.rowLabel}</th>
              {sheet.head.map((column, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: columns of a file may share a name and never move.
                <th key={at} scope="col">
                  <span className={styles.theirs}>{column.theirs}</span>
                  {column.ours}
                  <span className={styles.theirs}>{column.unit}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {sheet.rows.map((row, place) => {
              const before = sheet.rows[place - 1];
              return (
                <Fragment key={row.number}>
                  {before && before.number + 1 < row.number ? (
                    <tr>
                      <td>{sheet.gap}</td>
                    </tr>
                  ) : null}
                  <tr>
                    <th scope="row">{row.number}</th>
                    {row.cells.map((cell, at) => (
                      // biome-ignore lint/suspicious/noArrayIndexKey: cells of a row never move.
                      <td key={at}>
                        {cell.mark === null ? (
                          cell.text
                        ) : (
                          <>
                            <span className={styles.queried}>{cell.text}</span> <sup>{cell.mark}</sup>
                          </>
                        )}
                      </td>
                    ))}
                  </tr>
                </Fragment>
              );
            })}
          </tbody>
        </table>
      </section>
    </Part>
  );
}
