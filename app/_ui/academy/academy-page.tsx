import Link from "next/link";
import type { AcademyPage as Academy, AcademyPart } from "@/lib/report/academy-model";
import { GroupFilter } from "../group-filter/group-filter";
import { PageHead, Part } from "../part/part";
import { Ways } from "../part/ways";
import { Table } from "../table/table";
import styles from "./academy-page.module.css";
import { MonthChart } from "./month-chart";

type Counted = NonNullable<Academy["counted"]>;

function Counts({ part, chart }: { readonly part: AcademyPart; readonly chart?: Counted["proved"]["chart"] }) {
  return (
    <Part margin={part.margin} explains={part.explains}>
      <h2>{part.heading}</h2>
      {chart ? <MonthChart chart={chart} /> : null}
      {part.table === null ? null : <Table model={part.table} />}
      {part.links.map((link) => (
        <p key={link.href}>
          <Link prefetch={false} href={link.href} className={styles.link}>
            {link.label}
          </Link>
        </p>
      ))}
    </Part>
  );
}

/** How an academy gets on, in counts: what was proved, what to do next, the evidence, and what would settle the rest. */
export function AcademyPage({ model }: { readonly model: Academy }) {
  const { counted } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede}>
        <Ways links={model.ways} />
        {counted === null ? null : <GroupFilter filter={counted.filter} />}
      </PageHead>
      {counted === null ? null : (
        <>
          <Counts part={counted.proved} chart={counted.proved.chart} />
          <Counts part={counted.stalled} />
          <Counts part={counted.levels} />
          <Counts part={counted.films} />
          {counted.recorded === null ? null : <Counts part={counted.recorded} />}
          <Counts part={counted.open} />
          <Part margin={counted.method.margin}>
            <h2>{counted.method.heading}</h2>
            <p>{counted.method.text}</p>
          </Part>
        </>
      )}
    </>
  );
}
