import Link from "next/link";
import type { Brief, BriefItem, BriefList, PutAway } from "@/lib/report/brief-model";
import { Choices } from "../choices/choices";
import type { FormAction } from "../form/form";
import { Part } from "../part/part";
import styles from "./brief.module.css";

function methodOf(action: FormAction): "post" | undefined {
  return typeof action === "string" ? "post" : undefined;
}

function PutAwayButton({ putAway }: { readonly putAway: PutAway }) {
  return (
    <button
      type="submit"
      className={styles.quiet}
      name={putAway.state === "stands" ? "put" : "back"}
      value={putAway.key}
      aria-label={putAway.name}
    >
      {putAway.label}
    </button>
  );
}

function Item({ item }: { readonly item: BriefItem }) {
  return (
    <li className={item.putAway.state === "stands" ? undefined : styles.aside}>
      <p>
        <Link prefetch={false} href={item.student.href}>
          <strong>{item.student.label}</strong>
        </Link>{" "}
        {item.fundamental === null ? null : (
          <>
            <Link prefetch={false} href={item.fundamental.href}>
              {item.fundamental.label}
            </Link>{" "}
          </>
        )}
        {item.text}
      </p>
      <PutAwayButton putAway={item.putAway} />
    </li>
  );
}

function List({ list }: { readonly list: BriefList }) {
  return (
    <section className={styles.list} id={`brief-${list.word}`} aria-label={list.heading}>
      <h2>{list.heading}</h2>
      <p className={styles.explains}>{list.explains}</p>
      {list.choice === null ? null : <Choices {...list.choice} />}
      <ul className={styles.items}>
        {list.items.map((item) => (
          <Item key={item.putAway.key} item={item} />
        ))}
      </ul>
      <p className={styles.end}>
        {list.more === null ? null : (
          <Link prefetch={false} href={list.more.href}>
            {list.more.label}
          </Link>
        )}
        {list.all === null ? null : (
          <button type="submit" className={styles.quiet} name="list" value={list.all.word}>
            {list.all.label}
          </button>
        )}
      </p>
    </section>
  );
}

/** The one next thing of the coach's hour, or that the hour is over. */
export function BriefNext({ brief, action }: { readonly brief: Brief; readonly action: FormAction }) {
  const { next, quiet } = brief;
  if (next !== null)
    return (
      <Part margin={next.margin} note={next.note}>
        <h2>{next.heading}</h2>
        <p className={styles.text}>{next.text}</p>
        <p className={styles.alters}>{next.alters}</p>
        <form action={action} method={methodOf(action)} className={styles.press}>
          <Link prefetch={false} className="do" href={next.link.href}>
            {next.link.label}
          </Link>
          <PutAwayButton putAway={next.putAway} />
        </form>
      </Part>
    );
  return quiet === null ? null : (
    <Part margin={quiet.margin}>
      <h2>{quiet.heading}</h2>
      <p>{quiet.text}</p>
    </Part>
  );
}

/** What is known while nothing is proved. */
export function BriefKnown({ known }: { readonly known: Brief["known"] }) {
  if (known === null) return null;
  return (
    <Part margin={known.margin}>
      <h2>{known.heading}</h2>
      <p className={styles.text}>{known.text}</p>
    </Part>
  );
}

/** The lists of the week, each under its finding. */
export function BriefLists({ brief, action }: { readonly brief: Brief; readonly action: FormAction }) {
  const { lists, aside, margin } = brief;
  if (lists.length === 0 && aside === null) return null;
  return (
    <Part margin={margin}>
      <form action={action} method={methodOf(action)} className={styles.lists} id="brief">
        <input type="hidden" name="weeks" value={brief.weeks} />
        {lists.map((list) => (
          <List key={list.word} list={list} />
        ))}
      </form>
      {aside === null ? null : (
        <p className={styles.end}>
          <Link prefetch={false} href={aside.href}>
            {aside.label}
          </Link>
        </p>
      )}
    </Part>
  );
}
