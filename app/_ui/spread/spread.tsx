import Link from "next/link";
import type { ReactNode } from "react";
import type { AcademyPart } from "@/lib/report/academy-model";
import type { SpreadPage } from "@/lib/report/spread-model";
import { GroupFilter } from "../group-filter/group-filter";
import { BackLink } from "../part/back-link";
import details from "../part/details.module.css";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./spread.module.css";
import { SpreadChart } from "./spread-chart";

function Counts({
  part,
  texts = [],
  children,
}: {
  readonly part: AcademyPart;
  readonly texts?: readonly string[];
  readonly children?: ReactNode;
}) {
  return (
    <Part margin={part.margin} explains={part.explains}>
      <h2>{part.heading}</h2>
      {children}
      {texts.map((text) => (
        <p key={text} className={styles.text}>
          {text}
        </p>
      ))}
      {part.table === null ? null : <Table model={part.table} />}
      {part.links.length === 0 ? null : (
        <p className={styles.links}>
          {part.links.map((link) => (
            <Link key={link.href} prefetch={false} href={link.href} className={styles.link}>
              {link.label}
            </Link>
          ))}
        </p>
      )}
    </Part>
  );
}

/** One fundamental across an academy: where the levels lie, what was proved, the groups, and what helped. */
export function Spread({ model }: { readonly model: SpreadPage }) {
  const { counted } = model;
  const chart = counted?.levels.chart ?? null;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        {counted === null ? null : <GroupFilter filter={counted.filter} />}
      </PageHead>
      {counted === null ? null : (
        <>
          <Counts part={counted.levels} texts={counted.levels.texts}>
            {chart === null ? null : (
              <>
                <SpreadChart chart={chart} />
                <details className={`${details.details} ${styles.details}`}>
                  <summary>{chart.tableLabel}</summary>
                  <Table model={chart.table} />
                </details>
              </>
            )}
          </Counts>
          <Counts part={counted.moved} />
          {counted.groups === null ? null : <Counts part={counted.groups} />}
          <Counts part={counted.helped} texts={counted.helped.texts} />
        </>
      )}
    </>
  );
}
