import type { RecordPage as Model, Press, RecordPart } from "@/lib/report/record-page-model";
import { Facts } from "../facts/facts";
import type { FormAction } from "../form/form";
import { HiddenFields } from "../form/hidden-fields";
import { LinkRow } from "../link-row/link-row";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./record-page.module.css";

function Button({ press, action }: { readonly press: Press; readonly action: FormAction }) {
  return (
    <form action={action} method={typeof action === "string" ? "post" : undefined} className={styles.press}>
      <HiddenFields fields={press.hidden} />
      <p>{press.explains}</p>
      <button type="submit" className="do">
        {press.label}
      </button>
    </form>
  );
}

function Filled({ part, action }: { readonly part: RecordPart; readonly action: FormAction }) {
  return (
    <Part margin={part.margin} explains={part.explains}>
      <h2>{part.heading}</h2>
      {part.paragraphs.map((text) => (
        <p key={text}>{text}</p>
      ))}
      {part.facts.length === 0 ? null : <Facts facts={part.facts} />}
      <div className={styles.tables}>
        {part.tables.map((table) => (
          <Table key={table.caption} model={table} />
        ))}
      </div>
      <LinkRow links={part.links} />
      {part.presses.map((press) => (
        <Button key={press.hidden.map((field) => field.value).join(" ")} press={press} action={action} />
      ))}
    </Part>
  );
}

function Ask({ ask }: { readonly ask: NonNullable<Model["ask"]> }) {
  return (
    <form method="get" action={ask.action} className={styles.ask}>
      <HiddenFields fields={ask.hidden} />
      <label>
        {ask.label}
        <input type="date" name={ask.name} defaultValue={ask.value} max={ask.latest} required />
      </label>
      <button type="submit" className="do">
        {ask.submit}
      </button>
    </form>
  );
}

/** A page about what is on file, part by part. */
export function RecordPage({ model, action }: { readonly model: Model; readonly action: FormAction }) {
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        {model.notices.map((notice) => (
          <p key={notice} role="status">
            {notice}
          </p>
        ))}
        {model.ask === null ? null : <Ask ask={model.ask} />}
      </PageHead>
      {model.parts.map((part) => (
        <Filled key={part.margin} part={part} action={action} />
      ))}
    </>
  );
}
