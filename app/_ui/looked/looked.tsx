import type { LookedPage } from "@/lib/report/looked-model";
import { Choices } from "../choices/choices";
import { Facts } from "../facts/facts";
import { LinkRow } from "../link-row/link-row";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./looked.module.css";

function Message({ message }: { readonly message: LookedPage["message"] }) {
  return (
    <Part margin={message.margin}>
      <h2>{message.heading}</h2>
      <div className={styles.message}>
        <label htmlFor="message">{message.label}</label>
        <textarea
          id="message"
          readOnly
          rows={message.text.split("\n").length + 2}
          value={message.text}
          aria-describedby="message-hint"
        />
        <p id="message-hint" className={styles.hint}>
          {message.hint}
        </p>
      </div>
    </Part>
  );
}

/** Who looked at a student's record: everybody in a line, day by day, and words for the family. */
export function Looked({ model }: { readonly model: LookedPage }) {
  const { people, days, limits, links } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      <Part margin={people.margin}>
        <h2>{people.heading}</h2>
        {people.facts.length === 0 ? null : <Facts facts={people.facts} arrangement="list" />}
      </Part>
      <Part margin={days.margin} explains={days.explains}>
        <h2>{days.heading}</h2>
        <div className={styles.days}>
          {days.table === null ? <p>{days.none}</p> : <Table model={days.table} />}
          {days.pages === null ? null : <Choices {...days.pages} />}
        </div>
      </Part>
      <Message message={model.message} />
      <Part margin={limits.margin}>
        <h2>{limits.heading}</h2>
        {limits.paragraphs.map((text) => (
          <p key={text}>{text}</p>
        ))}
      </Part>
      <Part margin={links.label}>
        <LinkRow links={links.items} />
      </Part>
    </>
  );
}
