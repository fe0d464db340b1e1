import { useId } from "react";
import type { CopyText } from "@/lib/report/plan-model";
import { CopyButton } from "./copy-button";
import styles from "./plan.module.css";

/** A message to be copied as it stands: it can be selected where no script runs. */
export function MessageText({ model }: { readonly model: CopyText }) {
  const id = useId();
  return (
    <div className={styles.message}>
      <label htmlFor={id}>{model.label}</label>
      <textarea id={id} lang={model.lang} readOnly rows={8} value={model.text} />
      <CopyButton text={model.text} words={model.copy} />
    </div>
  );
}
