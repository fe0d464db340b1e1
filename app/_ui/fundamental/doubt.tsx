import type { FundamentalPage } from "@/lib/report/page-model";
import { Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./fundamental.module.css";

/** Where the doubt of one session comes from, and what would make it less. */
export function Doubt({ doubt }: { readonly doubt: NonNullable<FundamentalPage["doubt"]> }) {
  return (
    <Part margin={doubt.margin}>
      <div className={styles.pair}>
        <div className={styles.half}>
          <h2>{doubt.heading}</h2>
          <div className={styles.bar} aria-hidden="true">
            {doubt.parts.map((part) => (
              <span key={part.name} className={styles[part.pattern]} style={{ flexGrow: part.share }} />
            ))}
          </div>
          <dl className={styles.parts}>
            {doubt.parts.map((part) => (
              <div key={part.name}>
                <dt>
                  <span className={`${styles.key} ${styles[part.pattern]}`} aria-hidden="true" />
                  {part.name}
                </dt>
                <dd>{part.shareLabel}</dd>
                <dd>{part.sizeLabel}</dd>
              </div>
            ))}
          </dl>
        </div>
        {doubt.sharper ? (
          <div className={styles.half}>
            <h2>{doubt.sharper.heading}</h2>
            <Table model={doubt.sharper.table} />
          </div>
        ) : null}
      </div>
      {doubt.square.map((text) => (
        <p key={text}>{text}</p>
      ))}
    </Part>
  );
}
