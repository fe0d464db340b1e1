import type { UnfinishedModel, UnfinishedPartModel } from "@/lib/report/keep-model";
import { Part } from "../part/part";
import styles from "./keep.module.css";

/** Unfinished forms: each can be gone on with, or dropped after one more question. `back`: where that leads. */
export function UnfinishedList({ items, back }: { readonly items: readonly UnfinishedModel[]; readonly back: string }) {
  return (
    <ul className={styles.unfinished}>
      {items.map((item) => (
        <li key={item.id}>
          <span>{item.label}</span> <a href={item.goOn.href}>{item.goOn.label}</a>
          <details>
            <summary>{item.drop.ask}</summary>
            <p>{item.drop.explains}</p>
            <Move id={item.id} back={back} act="drop" label={item.drop.submit} />
          </details>
        </li>
      ))}
    </ul>
  );
}

/** Forms that were dropped and can be taken back. */
export function DroppedList(props: {
  readonly items: readonly UnfinishedModel[];
  readonly back: string;
  readonly takeBack: string;
}) {
  return (
    <ul className={styles.unfinished}>
      {props.items.map((item) => (
        <li key={item.id}>
          <span>{item.label}</span> <Move id={item.id} back={props.back} act="take-back" label={props.takeBack} />
        </li>
      ))}
    </ul>
  );
}

function Move(props: {
  readonly id: string;
  readonly back: string;
  readonly act: "drop" | "take-back";
  readonly label: string;
}) {
  return (
    <form action={`/api/drafts/${props.act}`} method="post" className={styles.move}>
      <input type="hidden" name="draft" value={props.id} />
      <input type="hidden" name="back" value={props.back} />
      <button type="submit" className="say">
        {props.label}
      </button>
    </form>
  );
}

/** The part of a page that lists both; nothing where there is neither. */
export function UnfinishedPart({ model }: { readonly model: UnfinishedPartModel }) {
  if (model.items.length === 0 && model.dropped.length === 0) return null;
  return (
    <Part margin={model.margin}>
      {model.items.length === 0 ? null : (
        <>
          <h2>{model.heading}</h2>
          <UnfinishedList items={model.items} back={model.back} />
        </>
      )}
      {model.dropped.length === 0 ? null : (
        <>
          <h3>{model.droppedHeading}</h3>
          <DroppedList items={model.dropped} back={model.back} takeBack={model.takeBack} />
        </>
      )}
    </Part>
  );
}
