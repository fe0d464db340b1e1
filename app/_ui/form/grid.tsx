import type { GridModel } from "@/lib/report/form-model";
import styles from "./form.module.css";

/** Swings down, fundamentals across, one cell a reading; the region scrolls sideways. */
export function Grid({ model }: { readonly model: GridModel }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable without a pointer.
    <section className={styles.scroll} tabIndex={0} aria-label={model.caption}>
      <table className={styles.grid}>
        <caption>{model.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{model.swingLabel}</th>
            {model.columns.map((column) => (
              <th key={column.fundamentalId} scope="col">
                {column.label}
                <span className={styles.unit}>{column.unit}</span>
                <span className={styles.unit}>{column.sign}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {model.rows.map((row) => (
            <tr key={row.label}>
              <th scope="row">{row.label}</th>
              {row.cells.map((cell) => (
                <td key={cell.name}>
                  <input
                    id={`field-${cell.name}`}
                    name={cell.name}
                    defaultValue={cell.value}
                    aria-label={cell.label}
                    aria-invalid={cell.error === "" ? undefined : true}
                    aria-describedby={cell.error === "" ? undefined : `error-${cell.name}`}
                    inputMode="text"
                    autoComplete="off"
                  />
                  {cell.error === "" ? null : (
                    <p id={`error-${cell.name}`} className={styles.error}>
                      {cell.error}
                    </p>
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
