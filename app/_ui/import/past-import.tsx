import Link from "next/link";
import type { PastImportPage, UndoModel } from "@/lib/report/past-import-model";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./past-import.module.css";

type Action = (data: FormData) => Promise<void>;

function UndoForm({ form, action }: { readonly form: NonNullable<UndoModel["form"]>; readonly action: Action }) {
  return (
    <form action={action} className={styles.undo}>
      <input type="hidden" name="batchId" value={form.batchId} />
      {form.error === "" ? null : (
        <p id="undo-error" role="alert" className={styles.error}>
          {form.error}
        </p>
      )}
      <label className={styles.sure}>
        <input
          type="checkbox"
          name="sure"
          value="yes"
          aria-describedby={form.error === "" ? undefined : "undo-error"}
          aria-invalid={form.error === "" ? undefined : true}
        />
        {form.sure}
      </label>
      <button type="submit" className="do">
        {form.submit}
      </button>
    </form>
  );
}

function Undo({ undo, action }: { readonly undo: UndoModel; readonly action: Action }) {
  return (
    <Part margin={undo.margin}>
      <h2>{undo.heading}</h2>
      {undo.paragraphs.map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
      {undo.built.length === 0 ? null : (
        <>
          <ul className={styles.lines}>
            {undo.built.map(({ text, link }, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: lines of a finished page never move.
              <li key={at}>
                {text}
                {link === null ? null : (
                  <>
                    {" · "}
                    <Link prefetch={false} href={link.href}>
                      {link.label}
                    </Link>
                  </>
                )}
              </li>
            ))}
          </ul>
          <p>{undo.instead}</p>
        </>
      )}
      {undo.links.map((link) => (
        <p key={link.href}>
          <Link prefetch={false} href={link.href}>
            {link.label}
          </Link>
        </p>
      ))}
      {undo.form === null ? null : <UndoForm form={undo.form} action={action} />}
    </Part>
  );
}

/** One import: what it brought, what was changed on the way, and its undo. */
export function PastImport({ model, action }: { readonly model: PastImportPage; readonly action: Action }) {
  const { students } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      {students === null ? null : (
        <Part margin={students.margin}>
          <h2>{students.heading}</h2>
          <Table
            model={students.table}
            drawn={{
              label: students.linkLabel,
              cells: students.links.map((link) => (
                <Link prefetch={false} key={link.href} className={styles.go} href={link.href} aria-label={link.label}>
                  {students.linkLabel}
                </Link>
              )),
            }}
          />
        </Part>
      )}
      {model.lines.map((part) => (
        <Part key={part.margin} margin={part.margin}>
          <h2>{part.heading}</h2>
          <ul className={styles.lines}>
            {part.items.map((item, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: lines of a finished page never move.
              <li key={at}>{item}</li>
            ))}
          </ul>
          {part.more === "" ? null : <p>{part.more}</p>}
        </Part>
      ))}
      <Undo undo={model.undo} action={action} />
    </>
  );
}
