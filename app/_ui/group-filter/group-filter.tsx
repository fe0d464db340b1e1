import Link from "next/link";
import type { GroupFilter as Filter } from "@/lib/report/group-filter";
import { Field } from "../form/field";
import styles from "./group-filter.module.css";

/** Of which students of an academy a page tells, and the way to others. */
export function GroupFilter({ filter }: { readonly filter: Filter }) {
  const { action, kept, field, submit, state, note, privacy, all } = filter;
  return (
    <>
      <form method="get" action={action} className={styles.filter}>
        {kept.map(({ name, value }) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        <Field field={field} />
        <button type="submit" className="do">
          {submit}
        </button>
      </form>
      <p>
        <strong>{state}</strong>
        {all === null ? null : (
          <>
            {" "}
            <Link prefetch={false} href={all.href} className={styles.link}>
              {all.label}
            </Link>
          </>
        )}
      </p>
      {note === "" ? null : <p>{note}</p>}
      <p className={styles.privacy}>{privacy}</p>
    </>
  );
}
