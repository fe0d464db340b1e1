import Link from "next/link";
import type { FormModel } from "@/lib/report/form-model";
import type { PlanPage as Plan } from "@/lib/report/plan-model";
import { Choices } from "../choices/choices";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import { MessageText } from "./message-text";
import styles from "./plan.module.css";
import { PlanForm } from "./plan-form";
import { PlanSheet } from "./plan-sheet";
import { Press } from "./press";

type Send = (data: FormData) => Promise<void>;

function Read({ read }: { readonly read: Plan["read"] }) {
  return (
    <Part margin={read.margin} explains={read.explains}>
      <h2>{read.heading}</h2>
      <ol className={styles.items}>
        {read.items.map((item) => (
          <li key={item.name}>
            <h3>
              {item.href === null ? (
                item.name
              ) : (
                <Link prefetch={false} href={item.href}>
                  {item.name}
                </Link>
              )}
            </h3>
            <p>{item.facts}</p>
            <p>{item.why}</p>
            <p className={styles.tells}>{item.tells}</p>
          </li>
        ))}
      </ol>
    </Part>
  );
}

function Lines({ part }: { readonly part: NonNullable<Plan["left"]> }) {
  return (
    <Part margin={part.margin}>
      <h2>{part.heading}</h2>
      {part.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </Part>
  );
}

function Film({ film }: { readonly film: NonNullable<Plan["film"]> }) {
  return (
    <Part margin={film.margin}>
      <h2>{film.heading}</h2>
      {film.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p className={styles.links}>
        {film.links.map((link) => (
          <Link prefetch={false} key={link.href} href={link.href}>
            {link.label}
          </Link>
        ))}
      </p>
    </Part>
  );
}

function Told({ told, back }: { readonly told: NonNullable<Plan["told"]>; readonly back: Send }) {
  return (
    <Part margin={told.margin}>
      <h2>{told.heading}</h2>
      <Table
        model={told.table}
        drawn={{
          label: told.change,
          cells: told.presses.map((press) => <Press key={press.hidden.planId} model={press} action={back} />),
        }}
      />
    </Part>
  );
}

/** A student's next film: what is read, how it is filmed, what is left out, the message and the sheet. Printed, the sheet alone. */
export function PlanPage(props: {
  readonly model: Plan;
  readonly form: FormModel;
  readonly actions: { readonly keep: Send; readonly workOut: Send; readonly back: Send; readonly remind: Send };
}) {
  const { model, form, actions } = props;
  const { awaited, film, left, send, sheet, told } = model;
  return (
    // Where nothing is asked for there is no sheet, and the page itself is printed.
    <div className={sheet === null ? undefined : styles.printed} data-paper={sheet === null ? undefined : "alone"}>
      <div className={styles.screen}>
        <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
          {model.notices.map((notice) => (
            <p key={notice} role="status">
              {notice}
            </p>
          ))}
          {model.clubGroups === null ? null : <Choices {...model.clubGroups} />}
          {awaited === null ? null : <p>{awaited.text}</p>}
          {awaited?.remind ? <Press model={awaited.remind} action={actions.remind} /> : null}
        </PageHead>
        {model.read.items.length === 0 ? null : <Read read={model.read} />}
        {film === null ? null : <Film film={film} />}
        {left === null ? null : <Lines part={left} />}
      </div>
      <PlanForm model={form} keep={actions.keep} workOut={actions.workOut} />
      {send === null ? null : (
        <div id="send" className={styles.screen}>
          <Part margin={send.margin} explains={send.explains}>
            {send.note === "" ? null : <p>{send.note}</p>}
            <MessageText model={send.message} />
          </Part>
        </div>
      )}
      {sheet === null ? null : <PlanSheet model={sheet} />}
      {told === null ? null : (
        <div className={styles.screen}>
          <Told told={told} back={actions.back} />
        </div>
      )}
      <div className={styles.screen}>
        <Lines part={model.cautions} />
      </div>
    </div>
  );
}
