import type { ConsentPage } from "@/lib/report/build-consent";
import { Part } from "../part/part";
import styles from "./asking-text.module.css";

/** A message to be copied as it stands; it needs no script, and nothing of it is sent from here. */
export function AskingText({ model }: { readonly model: ConsentPage["message"] }) {
  return (
    <Part margin={model.margin} explains={model.explains}>
      <label htmlFor="asking-text" className={styles.label}>
        {model.label}
      </label>
      <textarea id="asking-text" className={styles.text} readOnly rows={18} defaultValue={model.text} />
      <p className={styles.printed}>{model.text}</p>
    </Part>
  );
}
