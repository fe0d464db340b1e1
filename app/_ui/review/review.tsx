import Link from "next/link";
import type { ReviewPage, ReviewRow } from "@/lib/report/review-model";
import { Choices } from "../choices/choices";
import { Verdict } from "../glyph/glyph";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { ProvedPart } from "../report/proved-part";
import { SeasonAxis } from "../small-chart/season-axis";
import { SmallChart } from "../small-chart/small-chart";
import { Table } from "../table/table";
import styles from "./review.module.css";

function Row({ row }: { readonly row: ReviewRow }) {
  return (
    <li className={styles.row}>
      <div className={styles.words}>
        <h3>
          <Link prefetch={false} href={row.href}>
            {row.name}
          </Link>
        </h3>
        <Verdict glyph={row.glyph} word={row.word} size={16} />
        {row.lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
      <SmallChart chart={row.chart} />
    </li>
  );
}

function Rows({ rows }: { readonly rows: NonNullable<ReviewPage["rows"]> }) {
  return (
    <div className={styles.second}>
      <Part margin={rows.margin} explains={rows.explains}>
        <h2>{rows.heading}</h2>
        <ol className={styles.rows}>
          {rows.items.map((row) => (
            <Row key={row.id} row={row} />
          ))}
        </ol>
        <div className={styles.axis}>
          <SeasonAxis days={rows.days} />
        </div>
        {rows.more === "" ? null : <p className={styles.quiet}>{rows.more}</p>}
      </Part>
    </div>
  );
}

function Texts({ part }: { readonly part: ReviewPage["practice"] }) {
  return (
    <Part margin={part.margin}>
      {part.heading === "" ? null : <h2>{part.heading}</h2>}
      {part.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </Part>
  );
}

/** A student's season for ten minutes of talk: on a screen a page, on paper two sheets. */
export function Review({ model }: { readonly model: ReviewPage }) {
  const { proved, table, rows } = model;
  return (
    <div className={styles.review}>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        <p>{model.season}</p>
        <p className={styles.screen}>{model.print}</p>
        {model.clubGroups === null ? null : (
          <div className={styles.screen}>
            <Choices {...model.clubGroups} />
          </div>
        )}
      </PageHead>
      <ProvedPart proved={proved} className={styles.proved} />
      {table === null ? null : (
        <Part margin={table.margin} explains={table.explains}>
          <h2>{table.heading}</h2>
          <Table model={table.table} />
        </Part>
      )}
      <Texts part={model.next} />
      {rows === null ? null : <Rows rows={rows} />}
      <div className={styles.rest}>
        <Texts part={model.practice} />
        <Texts part={model.contact} />
        <Texts part={model.promise} />
        <p className={styles.caution}>{model.pain}</p>
      </div>
      <div className={styles.screen}>
        {model.cautions.map((caution) => (
          <p key={caution} className={styles.caution}>
            {caution}
          </p>
        ))}
      </div>
    </div>
  );
}
