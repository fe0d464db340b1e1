import Link from "next/link";
import type { LinkedTable, RereadsPage } from "@/lib/report/reread-model";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./rereads.module.css";

function Linked({ model, download }: { readonly model: LinkedTable; readonly download: RereadsPage["download"] }) {
  const cells = model.links.map((link) => (
    <Link prefetch={false} key={link.href} className={styles.go} href={link.href}>
      {link.label}
    </Link>
  ));
  return (
    <Part margin={model.margin} explains={model.explains}>
      <h2>{model.heading}</h2>
      <Table model={model.table} drawn={{ label: model.linkLabel, cells }} />
      {download === null ? null : (
        <p>
          <a className={styles.download} href={download.href}>
            {download.label}
          </a>
        </p>
      )}
    </Part>
  );
}

/** Draws, what they have measured, and each reader. */
export function Rereads({ model }: { readonly model: RereadsPage }) {
  const { download, draws, measured, readers, start } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        <p>
          <Link prefetch={false} className="do" href={start.href}>
            {start.label}
          </Link>
        </p>
      </PageHead>
      {draws === null ? null : <Linked model={draws} download={null} />}
      <Linked model={measured} download={download} />
      {readers === null ? null : (
        <Part margin={readers.margin} explains={readers.explains}>
          <h2>{readers.heading}</h2>
          <Table model={readers.table} />
        </Part>
      )}
    </>
  );
}
