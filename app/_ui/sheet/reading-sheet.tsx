import type { ReadingSheet as Sheet, SheetBlank } from "@/lib/report/sheet-model";
import { Choices } from "../choices/choices";
import { LineDrawing } from "../filming/line-drawing";
import { BackLink } from "../part/back-link";
import styles from "./reading-sheet.module.css";

function Blank({ blank }: { readonly blank: SheetBlank }) {
  return (
    <div className={styles[blank.width]}>
      <span>{blank.label}</span>
      {blank.boxes.length === 0 ? (
        <span className={styles.rule} />
      ) : (
        <ul className={styles.boxes}>
          {blank.boxes.map((box) => (
            <li key={box}>{box}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Choose({ choose }: { readonly choose: Sheet["choose"] }) {
  return (
    <details className={styles.choose}>
      <summary>{choose.summary}</summary>
      <form method="get">
        <input type="hidden" name="swings" value={choose.swings} />
        <fieldset>
          <legend>{choose.legend}</legend>
          {choose.options.map((option) => (
            <label key={option.value}>
              <input type="checkbox" name="columns" value={option.value} defaultChecked={option.ticked === "yes"} />
              {option.label}
            </label>
          ))}
        </fieldset>
        <button type="submit" className="do">
          {choose.submit}
        </button>
      </form>
    </details>
  );
}

function Table({ model }: { readonly model: Sheet }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable without a pointer.
    <section className={styles.scroll} tabIndex={0} aria-label={model.title}>
      <table className={styles.grid}>
        <thead>
          <tr>
            <th scope="col">{model.swingLabel}</th>
            {model.columns.map((column) => (
              <th key={column.fundamentalId} scope="col">
                {column.label}
              </th>
            ))}
          </tr>
          <tr>
            <td>
              <span className="said">{model.plusHead}</span>
            </td>
            {model.columns.map((column) => (
              <td key={column.fundamentalId} className={styles.sign}>
                <LineDrawing drawing={column.drawing} size="sign" />
                <b>{column.unit}</b>
                <span>{column.sign}</span>
                <span className={styles.checkpoint}>{column.checkpoint}</span>
              </td>
            ))}
          </tr>
        </thead>
        <tbody>
          {model.rows.map((row) => (
            <tr key={row}>
              <th scope="row">{row}</th>
              {model.columns.map((column) => (
                <td key={column.fundamentalId} className={styles.cell} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The grid of a session on one page of paper, to be filled in by hand beside the film. */
export function ReadingSheet({ model }: { readonly model: Sheet }) {
  return (
    <article className={styles.sheet}>
      <header className={styles.head}>
        <div className={styles.onScreen}>
          <BackLink link={model.back} />
        </div>
        <h1>{model.title}</h1>
        <p>{model.lede}</p>
        <div className={styles.onScreen}>
          <Choices label={model.swings.label} links={model.swings.links} />
          <Choose choose={model.choose} />
          {model.notice === "" ? null : <p role="status">{model.notice}</p>}
          <p>{model.print}</p>
        </div>
      </header>
      <div className={styles.blanks}>
        {model.blanks.map((blank) => (
          <Blank key={blank.label} blank={blank} />
        ))}
      </div>
      {model.films.map((film) => (
        <div key={film.view} className={styles.blanks}>
          <b>{film.view}</b>
          {film.blanks.map((blank) => (
            <Blank key={blank.label} blank={blank} />
          ))}
        </div>
      ))}
      <Table model={model} />
      <p className={styles.note}>{model.noteLabel}</p>
      <ul className={styles.rules}>
        {model.rules.map((rule) => (
          <li key={rule}>{rule}</li>
        ))}
      </ul>
    </article>
  );
}
