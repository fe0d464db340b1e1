import Link from "next/link";
import type { PracticeCell, PracticeForm as PracticeFormModel } from "@/lib/report/practice-form-model";
import { Field } from "../form/field";
import type { FormAction } from "../form/form";
import { KeptForm } from "../keep/kept-form";
import { Part } from "../part/part";
import styles from "./practice.module.css";

function Cell({ cell }: { readonly cell: PracticeCell }) {
  const wrong = cell.error !== "";
  return (
    <td>
      <input
        id={`field-${cell.name}`}
        name={cell.name}
        defaultValue={cell.value}
        aria-label={cell.label}
        aria-invalid={wrong ? true : undefined}
        aria-describedby={wrong ? `error-${cell.name}` : undefined}
        inputMode="numeric"
        autoComplete="off"
      />
      {wrong ? (
        <p id={`error-${cell.name}`} className={styles.error}>
          {cell.error}
        </p>
      ) : null}
    </td>
  );
}

/** Practice of a week, a row a day: most cells stay empty, and Enter in any of them logs what was typed. */
export function PracticeForm({ model, action }: { readonly model: PracticeFormModel; readonly action: FormAction }) {
  return (
    <KeptForm className={styles.form} keep={model.keep} hidden={model.hidden} action={action}>
      <Part margin={model.margin} explains={model.explains}>
        {model.refusal === "" ? null : (
          <p role="alert" className={styles.error}>
            {model.refusal}
          </p>
        )}
        <table className={styles.week}>
          <caption>{model.caption}</caption>
          <thead>
            <tr>
              {model.columns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {model.days.map((day) => (
              <tr key={day.label}>
                <th scope="row">{day.label}</th>
                <Cell cell={day.cells[0]} />
                <Cell cell={day.cells[1]} />
              </tr>
            ))}
          </tbody>
        </table>
        <nav className={styles.weeks} aria-label={model.weeks.label}>
          {model.weeks.links.map((link) => (
            <Link prefetch={false} key={link.href} href={link.href}>
              {link.label}
            </Link>
          ))}
        </nav>
        <div className={styles.fields}>
          {model.fields.map((field) => (
            <Field key={field.name} field={field} />
          ))}
        </div>
        <p>
          <button type="submit" className="do">
            {model.submit}
          </button>
        </p>
      </Part>
    </KeptForm>
  );
}
