import type { ReactNode } from "react";
import styles from "./fold.module.css";

/** What a phone keeps one step away; a wide page and paper show it at once, as if it weren't folded. */
export function Fold(props: {
  readonly label: string;
  /** What the label is about, said to a screen reader, where several folds have one label. */
  readonly of?: string;
  /** What the margin of a wide page explains. */
  readonly explains?: string;
  readonly children: ReactNode;
}) {
  return (
    <details className={styles.fold}>
      <summary>
        <span>{props.label}</span>
        {props.of === undefined ? null : <span className="said"> {props.of}</span>}
      </summary>
      <div className={styles.body}>
        {props.explains === undefined ? null : <p className={styles.explains}>{props.explains}</p>}
        {props.children}
      </div>
    </details>
  );
}
