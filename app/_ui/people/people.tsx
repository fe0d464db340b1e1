import type { PartForm, PeoplePage, PeoplePart, ShownOnce } from "@/lib/report/people-model";
import { Facts } from "../facts/facts";
import { Field } from "../form/field";
import type { FormAction } from "../form/form";
import { KeptForm } from "../keep/kept-form";
import { LinkRow } from "../link-row/link-row";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./people.module.css";

/** What the forms of a page are sent to, by name. */
export type PeopleActions = Readonly<Record<string, FormAction>>;

function Once({ once }: { readonly once: ShownOnce }) {
  return (
    <div className={styles.once}>
      {once.picture === null ? null : (
        <svg
          className={styles.picture}
          viewBox={`0 0 ${once.picture.size} ${once.picture.size}`}
          role="img"
          aria-label={once.picture.label}
          shapeRendering="crispEdges"
        >
          <rect width="100%" height="100%" fill="#fff" />
          <path d={once.picture.path} fill="#000" />
        </svg>
      )}
      <ul className={styles.lines}>
        {once.lines.map((line) => (
          <li key={line}>
            <code>{line}</code>
          </li>
        ))}
      </ul>
    </div>
  );
}

function Sent({ sent, actions }: { readonly sent: PartForm; readonly actions: PeopleActions }) {
  const { form } = sent;
  const action = actions[sent.act];
  if (action === undefined) throw new Error(`nothing is sent to ${sent.act}`);
  return (
    <KeptForm className={styles.form} keep={form.keep} hidden={form.hidden} action={action}>
      {form.refusal === "" ? null : (
        <p role="alert" className={styles.refusal}>
          {form.refusal}
        </p>
      )}
      {form.parts
        .flatMap((part) => part.fields)
        .map((field) => (
          <Field key={field.name} field={field} />
        ))}
      <p>
        <button type="submit" className="do">
          {form.submit}
        </button>
      </p>
    </KeptForm>
  );
}

function Piece({ part, actions }: { readonly part: PeoplePart; readonly actions: PeopleActions }) {
  return (
    <Part margin={part.margin}>
      {part.heading === "" ? null : <h2>{part.heading}</h2>}
      {part.paragraphs.map((text) => (
        <p key={text} className={styles.text}>
          {text}
        </p>
      ))}
      {part.once === null ? null : <Once once={part.once} />}
      {part.facts.length === 0 ? null : <Facts facts={part.facts} />}
      {part.table === null ? null : <Table model={part.table} />}
      <LinkRow links={part.links} />
      {part.forms.map((sent) => (
        <Sent key={`${sent.act} ${sent.form.hidden[0]?.value ?? ""}`} sent={sent} actions={actions} />
      ))}
    </Part>
  );
}

/** A page about accounts and people: parts with facts, tables and small forms. */
export function People({ model, actions }: { readonly model: PeoplePage; readonly actions: PeopleActions }) {
  return (
    <>
      <PageHead
        title={model.title}
        lede={model.lede}
        before={model.back === null ? undefined : <BackLink link={model.back} />}
      >
        {model.notice === "" ? null : (
          <p role="status" className={styles.notice}>
            {model.notice}
          </p>
        )}
      </PageHead>
      {model.parts.map((part) => (
        <Piece key={part.margin} part={part} actions={actions} />
      ))}
    </>
  );
}
