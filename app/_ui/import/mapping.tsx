import type { ImportChoice, ImportMapping } from "@/lib/report/form-model";
import { Part } from "../part/part";
import styles from "./mapping.module.css";

/** A choice; beside it stands what it showed, so that only a change counts as said. */
function Choice({ choice, of }: { readonly choice: ImportChoice; readonly of: string }) {
  return (
    <>
      <input type="hidden" name={`shown:${choice.name}`} value={choice.value} />
      <label className={styles.choice}>
        <span>{choice.label}</span>
        <select name={choice.name} defaultValue={choice.value} aria-label={`${of} ${choice.label}`}>
          {choice.groups.map((group) => {
            const options = group.options.map((option) => (
              <option key={option.value} value={option.value}>
                {option.label}
              </option>
            ));
            return group.label === "" ? (
              options
            ) : (
              <optgroup key={group.label} label={group.label}>
                {options}
              </optgroup>
            );
          })}
        </select>
      </label>
    </>
  );
}

/**
 * What each column is taken for, with the guess chosen and a button to read the file anew. That button is the form's
 * first, so that Enter in any field keeps the answers and does nothing else.
 */
export function Mapping({ mapping, forget }: { readonly mapping: ImportMapping; readonly forget: string | null }) {
  return (
    <Part margin={mapping.margin} explains={mapping.explains}>
      <h2>{mapping.heading}</h2>
      <ul className={styles.mapping}>
        {mapping.columns.map((column) => (
          <li key={column.place}>
            <p>
              <span className={styles.head}>{column.heading}</span>
              <span className={styles.sample}>{column.sample}</span>
            </p>
            <Choice choice={column.meaning} of={column.heading} />
            {column.unit === null ? null : <Choice choice={column.unit} of={column.heading} />}
          </li>
        ))}
      </ul>
      {mapping.more === "" ? null : <p>{mapping.more}</p>}
      <p className={styles.actions}>
        <button type="submit" className="do" name="intent" value="columns">
          {mapping.submit}
        </button>
        {forget === null ? null : (
          <button type="submit" className="say" name="intent" value="forget">
            {forget}
          </button>
        )}
      </p>
    </Part>
  );
}
