import type { ReaderErrorPage, RereadLevelPart } from "@/lib/report/reread-model";
import { BackLink } from "../part/back-link";
import details from "../part/details.module.css";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import { Differences } from "./differences";
import styles from "./rereads.module.css";

function Level({ model }: { readonly model: RereadLevelPart }) {
  return (
    <Part margin={model.margin} explains={model.explains}>
      <h2>{model.heading}</h2>
      {model.table === null ? null : <Table model={model.table} />}
      {model.plot === null ? null : (
        <>
          <Differences plot={model.plot} />
          <details className={`${details.details} ${styles.details}`}>
            <summary>{model.plot.tableLabel}</summary>
            <Table model={model.plot.table} />
          </details>
        </>
      )}
    </Part>
  );
}

/** How closely one fundamental is read. */
export function ReaderError({ model }: { readonly model: ReaderErrorPage }) {
  const { judged, two } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      <Part margin={judged.margin}>
        <h2>{judged.heading}</h2>
        <p className={styles.text}>{judged.text}</p>
        {judged.table === null ? null : <Table model={judged.table} />}
      </Part>
      <Level model={model.film} />
      <Level model={model.still} />
      <Part margin={two.margin} explains={two.explains}>
        <h2>{two.heading}</h2>
        <p className={styles.text}>{two.text}</p>
        {two.table === null ? null : <Table model={two.table} />}
      </Part>
    </>
  );
}
