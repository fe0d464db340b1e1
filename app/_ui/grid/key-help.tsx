import type { GridWords } from "@/lib/report/grid-model";
import styles from "./grid.module.css";

function Keys({ keys }: { readonly keys: GridWords["keys"] }) {
  return (
    <dl className={styles.keys}>
      {keys.map((each) => (
        <div key={each.does}>
          <dt>
            {each.keys.map((key) => (
              <kbd key={key}>{key}</kbd>
            ))}
          </dt>
          <dd>{each.does}</dd>
        </div>
      ))}
    </dl>
  );
}

/** What the keys do in a cell, and the switch for the single letters. */
export function KeyHelp(props: {
  readonly words: GridWords;
  readonly letters: "on" | "off";
  readonly onLetters: (letters: "on" | "off") => void;
}) {
  const { words, letters } = props;
  return (
    <div className={styles.help}>
      <label className={styles.switch}>
        <input
          type="checkbox"
          checked={letters === "on"}
          onChange={(event) => props.onLetters(event.target.checked ? "on" : "off")}
        />
        {words.letters}
      </label>
      {letters === "on" ? <Keys keys={words.letterKeys} /> : null}
      <details>
        <summary>{words.keysHeading}</summary>
        <Keys keys={words.keys} />
      </details>
    </div>
  );
}
