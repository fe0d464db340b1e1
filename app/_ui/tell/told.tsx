import type { ToldList } from "@/lib/report/tell-model";
import { Part } from "../part/part";
import { Press } from "../plan/press";
import styles from "./tell.module.css";

/** Everything that was told, word for word; nothing of it can be changed, only taken back. */
export function Told({ told, back }: { readonly told: ToldList; readonly back: (data: FormData) => Promise<void> }) {
  return (
    <Part margin={told.margin}>
      <h2>{told.heading}</h2>
      <div className={styles.told}>
        {told.entries.map((entry) => (
          <details key={entry.id}>
            <summary>
              {entry.heading}
              {entry.state === "" ? null : <span className={styles.state}> {entry.state}</span>}
            </summary>
            <p className={styles.sent} lang={told.lang}>
              {entry.text}
            </p>
            <Press model={entry.press} action={back} />
          </details>
        ))}
      </div>
    </Part>
  );
}
