import Link from "next/link";
import type { KeepPart, KeptItem } from "@/lib/report/keep-list-model";
import { Fold } from "../part/fold";
import { Part } from "../part/part";
import styles from "./keep.module.css";

function Item({ item }: { readonly item: KeptItem }) {
  return (
    <li data-state={item.state} className={styles.item}>
      <h3>
        <Link prefetch={false} href={item.href}>
          {item.name}
        </Link>
      </h3>
      <p className={styles.state}>{item.stateWord}</p>
      <div className={styles.texts}>
        {item.texts.map((text) => (
          <p key={text}>{text}</p>
        ))}
        {item.dose === null ? null : (
          <>
            <p>{item.dose.text}</p>
            <p>
              <Link prefetch={false} className="say" href={item.dose.action.href}>
                {item.dose.action.label}
              </Link>
            </p>
          </>
        )}
      </div>
    </li>
  );
}

function List({ items }: { readonly items: readonly KeptItem[] }) {
  return items.length === 0 ? null : (
    <ul className={styles.list}>
      {items.map((item) => (
        <Item key={item.fundamentalId} item={item} />
      ))}
    </ul>
  );
}

/** What is owned, to keep: alarms first; and the next fundamental once one was released. A phone folds what asks for nothing. */
export function Keep({ keep, fold }: { readonly keep: KeepPart; readonly fold: string }) {
  const alarms = keep.items.filter(({ state }) => state === "watch");
  return (
    <Part margin={keep.margin} explains={keep.explains} explainsIn="fold">
      <h2>{keep.heading}</h2>
      {keep.release === null ? null : (
        <div className={styles.release}>
          <h3>{keep.release.heading}</h3>
          <p>{keep.release.text}</p>
          {keep.release.action === null ? null : (
            <p>
              <Link prefetch={false} className="do" href={keep.release.action.href}>
                {keep.release.action.label}
              </Link>
            </p>
          )}
        </div>
      )}
      <List items={alarms} />
      <Fold label={fold} explains={keep.explains}>
        <List items={keep.items.filter((item) => !alarms.includes(item))} />
        {keep.cost === "" ? null : <p>{keep.cost}</p>}
        <p className={styles.rule}>{keep.rule}</p>
      </Fold>
    </Part>
  );
}
