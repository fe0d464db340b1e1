import Link from "next/link";
import type { DuePage as Due } from "@/lib/report/build-due";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { MessageText } from "../plan/message-text";
import { Press } from "../plan/press";
import { Table } from "../table/table";
import styles from "./due-page.module.css";

function Listed({ part }: { readonly part: Due["films"] }) {
  return (
    <Part margin={part.margin}>
      <h2>{part.heading}</h2>
      {part.table === null ? null : <Table model={part.table} />}
    </Part>
  );
}

/** What was promised and hasn't come, with a ready reminder for each family, and what is to be measured again. */
export function DuePage({
  model,
  remind,
}: {
  readonly model: Due;
  readonly remind: (data: FormData) => Promise<void>;
}) {
  const { reminders, drills } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      <Listed part={model.films} />
      {drills ? <Listed part={drills} /> : null}
      {reminders === null ? null : (
        <div className={styles.reminders}>
          <Part margin={reminders.margin} explains={reminders.explains}>
            <h2>{reminders.heading}</h2>
            <ul className={styles.items}>
              {reminders.items.map((item) => (
                <li key={item.planId}>
                  <h3>{item.heading}</h3>
                  {item.said === "" ? null : <p>{item.said}</p>}
                  <MessageText model={item.message} />
                  <div className={styles.ways}>
                    <Press model={item.press} action={remind} />
                    <Link prefetch={false} href={item.plan.href}>
                      {item.plan.label}
                    </Link>
                  </div>
                </li>
              ))}
            </ul>
          </Part>
        </div>
      )}
    </>
  );
}
