import type { ReactNode } from "react";
import styles from "./part.module.css";

/** One part of a page: its name in the margin, its content beside it; on a phone the margin stands above. */
export function Part(props: {
  readonly margin: string;
  readonly note?: string;
  readonly explains?: string;
  /** `fold`: on a phone the explanation stands in a fold of the part, which says it again. */
  readonly explainsIn?: "margin" | "fold";
  readonly children: ReactNode;
}) {
  return (
    <section className={styles.part} aria-label={props.margin}>
      <div className={styles.margin}>
        <p className={styles.name}>{props.margin}</p>
        {props.note ? <p>{props.note}</p> : null}
        {props.explains ? (
          <p className={`${styles.explains} ${props.explainsIn === "fold" ? styles.folded : ""}`}>{props.explains}</p>
        ) : null}
      </div>
      <div className={styles.content}>{props.children}</div>
    </section>
  );
}

/** The head of a page: its finding, and one line more. */
export function PageHead(props: {
  readonly title: string;
  readonly lede?: string;
  readonly before?: ReactNode;
  readonly children?: ReactNode;
}) {
  return (
    <header className={styles.head}>
      {props.before}
      <h1>{props.title}</h1>
      {props.lede ? <p className={styles.lede}>{props.lede}</p> : null}
      {props.children}
    </header>
  );
}
