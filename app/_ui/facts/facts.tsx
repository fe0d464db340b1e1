import type { Fact } from "@/lib/report/page-model";
import styles from "./facts.module.css";

/** Facts side by side, each a name and a value; `list` puts them one under the other, `wide` with room for sentences. */
export function Facts({
  facts,
  arrangement,
}: {
  readonly facts: readonly Fact[];
  readonly arrangement?: "row" | "list" | "wide";
}) {
  return (
    <dl className={styles[arrangement ?? "row"]}>
      {facts.map((fact) => (
        <div key={fact.name} className={styles.fact}>
          <dt>{fact.name}</dt>
          <dd>
            {fact.value}
            {fact.note === "" ? null : <span className={styles.note}>{fact.note}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
