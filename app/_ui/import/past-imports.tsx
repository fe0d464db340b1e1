import Link from "next/link";
import type { PastImportsPage } from "@/lib/report/past-import-model";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./past-import.module.css";

/** Everything that was imported. */
export function PastImports({ model }: { readonly model: PastImportsPage }) {
  const cells = model.links.map((link) => (
    <Link prefetch={false} key={link.href} className={styles.go} href={link.href} aria-label={link.label}>
      {model.linkLabel}
    </Link>
  ));
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      <Part margin={model.margin}>
        {model.table === null ? (
          <p>{model.empty}</p>
        ) : (
          <Table model={model.table} drawn={{ label: model.linkLabel, cells }} />
        )}
      </Part>
    </>
  );
}
