import Link from "next/link";
import type { FundamentalPage } from "@/lib/report/page-model";
import { LinkRow } from "../link-row/link-row";
import details from "../part/details.module.css";
import { Table } from "../table/table";
import styles from "./fundamental.module.css";

type Verdict = FundamentalPage["verdict"];

function Figures({ figures }: { readonly figures: NonNullable<Verdict["figures"]> }) {
  return (
    <>
      <ol className={styles.steps}>
        {figures.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <Table model={figures.figures} />
      {figures.looks === null ? null : <Table model={figures.looks} />}
      <p>{figures.check}</p>
      <LinkRow links={figures.links} />
    </>
  );
}

/** How a verdict was decided: the way in sentences, every number that went in, and what it takes to check them. */
export function Decided({ verdict }: { readonly verdict: Verdict }) {
  if (verdict.detail.length === 0 && !verdict.figures) return null;
  return (
    <details className={details.details}>
      <summary>{verdict.detailLabel}</summary>
      {verdict.figures ? <Figures figures={verdict.figures} /> : null}
      {verdict.detail.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p>
        <Link prefetch={false} className={styles.link} href={verdict.decides.href}>
          {verdict.decides.label}
        </Link>
      </p>
    </details>
  );
}
