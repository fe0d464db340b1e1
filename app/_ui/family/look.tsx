import type { FamilyMilestones, FamilyNumbers, FamilyStrips } from "@/lib/report/family-look-model";
import { drawStrip } from "../strip/draw-strip";
import { Strip } from "../strip/strip";
import styles from "./look.module.css";

/** All else that is measured, one line each with its word. */
export function Strips({ model }: { readonly model: FamilyStrips }) {
  return (
    <>
      <h2>{model.heading}</h2>
      <p className={styles.lead}>{model.lead}</p>
      <ul className={styles.strips}>
        {model.rows.map((row) => (
          <li key={row.of}>
            <span>{row.of}</span>
            <Strip drawn={drawStrip(row.strip, 200)} label={row.strip.summary} width={200} />
            <strong>{row.word}</strong>
          </li>
        ))}
      </ul>
    </>
  );
}

/** What was reached, in the order of months. */
export function Milestones({ model }: { readonly model: FamilyMilestones }) {
  return (
    <>
      <h2>{model.heading}</h2>
      <dl className={styles.milestones}>
        {model.items.map(({ when, text }) => (
          <div key={`${when} ${text}`}>
            <dt>{when}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}

/** The numbers, shut until somebody wants them. */
export function Numbers({ model }: { readonly model: FamilyNumbers }) {
  const { label, lines, items, videos } = model;
  return (
    <details className={styles.numbers}>
      <summary>{label}</summary>
      <ul className={styles.said}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {items.map(({ of, facts }) => (
        <section key={of}>
          <h3>{of}</h3>
          <dl className={styles.facts}>
            {facts.map(({ name, value }) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
      {videos === null ? null : (
        <section>
          <h3>{videos.heading}</h3>
          <ul className={styles.said}>
            {videos.lines.map((line, at) => (
              // Two videos of one day can show the same.
              // biome-ignore lint/suspicious/noArrayIndexKey: the list is drawn once and never reordered
              <li key={at}>{line}</li>
            ))}
          </ul>
        </section>
      )}
    </details>
  );
}
