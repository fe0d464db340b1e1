import Link from "next/link";
import type { SeasonPage, SeasonRow } from "@/lib/report/page-model";
import { SaveChart } from "../chart-file/save-chart";
import { Choices } from "../choices/choices";
import { Contact } from "../contact/contact";
import { Facts } from "../facts/facts";
import { Verdict } from "../glyph/glyph";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { SeasonAxis } from "../small-chart/season-axis";
import { SmallChart } from "../small-chart/small-chart";
import { Table } from "../table/table";
import styles from "./season.module.css";

function Row({ row }: { readonly row: SeasonRow }) {
  return (
    <li className={styles.row} data-place={row.place}>
      <div className={styles.words}>
        <h3>
          <Link prefetch={false} href={row.href}>
            {row.name}
          </Link>
        </h3>
        <Verdict glyph={row.glyph} word={row.word} size={16} />
        <p>{row.text}</p>
      </div>
      <SmallChart chart={row.chart} />
      <Facts facts={row.facts} arrangement="list" />
    </li>
  );
}

/** The time axis of all charts, once under the last. */
function Axis({ evidence }: { readonly evidence: SeasonPage["evidence"] }) {
  const days = evidence.groups[0]?.rows[0]?.chart.x;
  return days === undefined ? null : (
    <div className={styles.axis}>
      <SeasonAxis
        days={days}
        under={{
          drills: evidence.drills ?? [],
          events: evidence.events ?? [],
          practice: evidence.practice ?? null,
        }}
      />
    </div>
  );
}

/** A student's season. */
export function Season({ model }: { readonly model: SeasonPage }) {
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        {model.clubGroups === null ? null : <Choices {...model.clubGroups} />}
        {model.notices.map((notice) => (
          <p key={notice}>{notice}</p>
        ))}
        <p className={styles.actions}>
          {model.actions.map((action) => (
            <a key={action.href} href={action.href}>
              {action.label}
            </a>
          ))}
        </p>
      </PageHead>
      <Part margin={model.proved.margin}>
        <h2>{model.proved.heading}</h2>
        {model.proved.items.length === 0 ? <p>{model.proved.empty}</p> : null}
        {model.proved.items.map((item) => (
          <div key={item.heading}>
            <h3>
              <Link prefetch={false} className={styles.proved} href={item.href}>
                <Verdict glyph={item.glyph} word={item.heading} />
              </Link>
            </h3>
            <p>{item.text}</p>
          </div>
        ))}
      </Part>
      {model.next === null ? null : (
        <Part margin={model.next.margin}>
          <h2>{model.next.heading}</h2>
          <p>{model.next.text}</p>
          <p>{model.next.alters}</p>
        </Part>
      )}
      <Part margin={model.evidence.margin} explains={model.evidence.explains}>
        <h2>{model.evidence.heading}</h2>
        {model.evidence.groups.map((group) => (
          <section key={group.label} aria-label={group.label}>
            <p className={styles.group}>{group.label}</p>
            <ol className={styles.chain}>
              {group.rows.map((row) => (
                <Row key={row.fundamentalId} row={row} />
              ))}
            </ol>
          </section>
        ))}
        <Axis evidence={model.evidence} />
        {model.evidence.files === null ? null : <SaveChart files={model.evidence.files} />}
        {model.evidence.marked ? <p>{model.evidence.marked}</p> : null}
        {model.evidence.practice ? <p>{model.evidence.practice.summary}</p> : null}
        {model.drills === null ? null : <Table model={model.drills} />}
      </Part>
      {model.contact === null ? null : <Contact model={model.contact} />}
      {model.settle === null ? null : (
        <Part margin={model.settle.margin}>
          <h2>{model.settle.heading}</h2>
          <Table model={model.settle.table} />
        </Part>
      )}
      <Part margin={model.sessions.margin}>
        <h2>{model.sessions.heading}</h2>
        <Table model={model.sessions.table} />
        {model.cautions.map((caution) => (
          <p key={caution} className={styles.caution}>
            {caution}
          </p>
        ))}
      </Part>
    </>
  );
}
