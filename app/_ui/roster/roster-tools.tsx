import Link from "next/link";
import type { RosterPage } from "@/lib/report/page-model";
import { Field } from "../form/field";
import type { FormAction } from "../form/form";
import form from "../form/form.module.css";
import { HiddenFields } from "../form/hidden-fields";
import styles from "./roster-tools.module.css";

type Tools = RosterPage["evidence"]["tools"];

/** What keeps a view for its viewer, and lets go of it. */
export interface ViewActions {
  readonly keep: FormAction;
  readonly forget: FormAction;
}

/** Finds, filters and orders: a form whose answer is an address, so that it works without scripts and as a bookmark. */
function Find({ tools }: { readonly tools: Tools }) {
  return (
    <form method="get" action={tools.action} className={styles.find}>
      <HiddenFields fields={tools.hidden} />
      <div className={styles.search}>
        <label htmlFor="find-q">{tools.search.label}</label>
        <input
          id="find-q"
          type="search"
          name={tools.search.name}
          defaultValue={tools.search.value}
          autoComplete="off"
          spellCheck={false}
        />
        <button type="submit" className="do">
          {tools.submit}
        </button>
      </div>
      <details open={tools.more.open === "yes"}>
        <summary className={styles.summary}>{tools.more.summary}</summary>
        <div className={form.fields}>
          {tools.more.fields.map((field) => (
            <Field key={field.name} field={field} />
          ))}
        </div>
      </details>
    </form>
  );
}

function KeptView({ tools, actions }: { readonly tools: Tools; readonly actions: ViewActions }) {
  const { keep, forget, kept, back } = tools;
  const method = (action: FormAction) => (typeof action === "string" ? "post" : undefined);
  if (keep === null && forget === null) return null;
  return (
    <div className={styles.view}>
      {kept === "" ? null : <p>{kept}</p>}
      {back === null ? null : (
        <Link prefetch={false} href={back.href} className={styles.link}>
          {back.label}
        </Link>
      )}
      {keep === null ? null : (
        <form action={actions.keep} method={method(actions.keep)}>
          <input type="hidden" name="query" value={keep.query} />
          <button type="submit" className="say" aria-describedby="keep-view">
            {keep.label}
          </button>
        </form>
      )}
      {forget === null ? null : (
        <form action={actions.forget} method={method(actions.forget)}>
          <button type="submit" className="say">
            {forget}
          </button>
        </form>
      )}
      {keep === null ? null : (
        <p id="keep-view" className={styles.explains}>
          {keep.explains}
        </p>
      )}
    </div>
  );
}

/** Above the students: the form, what it came to, and the view that the viewer keeps. */
export function RosterTools({ tools, actions }: { readonly tools: Tools; readonly actions: ViewActions }) {
  return (
    <div className={styles.tools}>
      <Find tools={tools} />
      <div className={styles.came}>
        <p>
          <strong>{tools.state}</strong>
        </p>
        {tools.filters.length === 0 ? null : (
          <ul aria-label={tools.filtersLabel} className={styles.links}>
            {tools.filters.map((link) => (
              <li key={link.href}>
                <Link prefetch={false} href={link.href} className={styles.link}>
                  {link.label}
                </Link>
              </li>
            ))}
          </ul>
        )}
        {tools.all === null ? null : (
          <Link prefetch={false} href={tools.all.href} className={styles.link}>
            {tools.all.label}
          </Link>
        )}
      </div>
      <KeptView tools={tools} actions={actions} />
    </div>
  );
}

/** In place of the table where nobody answers the filters: which of them to drop. */
export function NobodyFound({ none }: { readonly none: NonNullable<Tools["none"]> }) {
  return (
    <div className={styles.none}>
      <h3>{none.heading}</h3>
      <p>{none.text}</p>
      <ul>
        {none.ways.map((way) => (
          <li key={way.href}>
            <Link prefetch={false} href={way.href} className={styles.link}>
              {way.label}
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}
