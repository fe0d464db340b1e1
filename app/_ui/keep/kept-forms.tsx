import type { KeepModel } from "@/lib/report/keep-model";
import styles from "./keep.module.css";
import { DroppedList, UnfinishedList } from "./unfinished";

/** What lies unfinished of a form that is opened anew; nothing where this one holds something. */
export function KeptForms({ keep }: { readonly keep: KeepModel }) {
  const { words, unfinished, dropped } = keep;
  if (unfinished.length === 0 && dropped === null) return null;
  return (
    <section className={styles.offer} aria-label={words.unfinished}>
      {dropped === null ? null : (
        <>
          <p>{words.dropped}</p>
          <DroppedList items={[dropped]} back={words.page} takeBack={words.takeBack} />
        </>
      )}
      {unfinished.length === 0 ? null : (
        <>
          <p>{words.unfinished}</p>
          <UnfinishedList items={unfinished} back={words.page} />
        </>
      )}
    </section>
  );
}
