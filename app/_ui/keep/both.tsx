"use client";

import type { BothModel, KeepWords } from "@/lib/report/keep-model";
import styles from "./keep.module.css";

/** What two windows hold of one form, to be chosen from; without scripts the choice goes with the form. */
export function Both({
  both,
  words,
  onUse,
}: {
  readonly both: BothModel;
  readonly words: KeepWords;
  /** The fields for which the other window's value was chosen; null: some have no choice yet. */
  readonly onUse: (there: readonly string[] | null) => void;
}) {
  const chosen = (form: HTMLFormElement | null): readonly string[] | null => {
    const data = form ? new FormData(form) : new FormData();
    const picks = both.fields.map(({ name }) => ({ name, pick: data.get(`pick.${name}`) }));
    return picks.some(({ pick }) => pick === null)
      ? null
      : picks.flatMap((each) => (each.pick === "there" ? [each.name] : []));
  };
  const names = both.fields.map(({ name }) => name);
  return (
    <div id="both" className={styles.both} tabIndex={-1}>
      <p role="alert" className={styles.changed}>
        {both.said}
      </p>
      {both.fields.length === 0 ? null : (
        <table>
          <caption>{words.choose}</caption>
          <thead>
            <tr>
              <th scope="col">{words.field}</th>
              <th scope="col">{both.here}</th>
              <th scope="col">{both.there}</th>
            </tr>
          </thead>
          <tbody>
            {both.fields.map((field) => (
              <tr key={field.name}>
                <th scope="row">{field.label}</th>
                {(["here", "there"] as const).map((side) => (
                  <td key={side}>
                    <label>
                      <input type="radio" name={`pick.${field.name}`} value={side} />
                      <span className="said">{field.label} </span>
                      <span>{field[side]}</span>
                    </label>
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className={styles.uses}>
        <button type="button" className="say" onClick={(event) => onUse(chosen(event.currentTarget.form))}>
          {words.use}
        </button>
        <button type="button" className="say" onClick={() => onUse([])}>
          {words.allHere}
        </button>
        <button type="button" className="say" onClick={() => onUse(names)}>
          {words.allThere}
        </button>
      </p>
    </div>
  );
}
