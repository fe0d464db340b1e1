import type { DecidesPage, TickRow } from "@/lib/report/build-decides";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import { TextPart } from "../text-page/text-page";
import styles from "./decides.module.css";

const TICKS = Array.from({ length: 100 }, (_, i) => i);

/** A hundred ticks in ten groups of ten, the first so many of them tall and strong. */
function Ticks({ count }: { readonly count: number }) {
  const at = (i: number): number => 3 + 6 * i + 6 * Math.floor(i / 10);
  const path = (from: number, to: number, top: number, bottom: number): string =>
    TICKS.slice(from, to)
      .map((i) => `M${at(i)} ${top}V${bottom}`)
      .join("");
  return (
    <svg className={styles.ticks} viewBox="0 0 660 24" preserveAspectRatio="none" aria-hidden="true">
      <path className={styles.rest} d={path(count, 100, 15, 22)} />
      <path className={styles.drawn} d={path(0, count, 2, 22)} />
    </svg>
  );
}

function TickRows({ rows }: { readonly rows: readonly TickRow[] }) {
  return (
    <dl className={styles.rows}>
      {rows.map((row) => (
        <div key={row.label}>
          <dt>{row.label}</dt>
          <dd className={styles.figure}>
            <Ticks count={row.count} />
          </dd>
          <dd className={styles.count}>{row.countLabel}</dd>
        </div>
      ))}
    </dl>
  );
}

/** How a verdict comes about: the idea in words, what was measured, what it can't do. */
export function Decides({ model }: { readonly model: DecidesPage }) {
  const { brief, measured, limits } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      <div className={styles.read}>
        {model.parts.map((part) => (
          <TextPart key={part.margin} part={part} />
        ))}
      </div>
      <Part margin={measured.margin} explains={measured.explains}>
        <h2>{measured.heading}</h2>
        <TickRows rows={measured.rows} />
        <Table model={measured.table} />
        {measured.paragraphs.map((paragraph) => (
          <p key={paragraph} className={styles.paragraph}>
            {paragraph}
          </p>
        ))}
      </Part>
      {[limits, brief].map((part) => (
        <Part key={part.margin} margin={part.margin}>
          <h2>{part.heading}</h2>
          <Table model={part.table} />
          {part.paragraphs.map((paragraph) => (
            <p key={paragraph} className={styles.paragraph}>
              {paragraph}
            </p>
          ))}
        </Part>
      ))}
    </>
  );
}
