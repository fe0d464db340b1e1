import Link from "next/link";
import type { RosterPage } from "@/lib/report/page-model";
import { Choices } from "../choices/choices";
import type { FormAction } from "../form/form";
import { Glyph } from "../glyph/glyph";
import { PageHead, Part } from "../part/part";
import { ProvedBlocks, ProvedTable } from "./proved-table";
import styles from "./roster.module.css";
import { RosterBlocks } from "./roster-blocks";
import { RosterTable } from "./roster-table";

function Start({ start }: { readonly start: NonNullable<RosterPage["start"]> }) {
  return (
    <Part margin={start.heading}>
      <ol className={styles.steps}>
        {start.steps.map((step) => (
          <li key={step.label}>
            <h2>
              <Link prefetch={false} href={step.href}>
                {step.label}
              </Link>
            </h2>
            <p>{step.text}</p>
          </li>
        ))}
      </ol>
    </Part>
  );
}

/** Every student: what is newly proved, one thing to do next, the evidence in strips, what would settle the rest. */
export function Roster({ model, seenAction }: { readonly model: RosterPage; readonly seenAction: FormAction }) {
  const { proved, watch, next, evidence, settle } = model;
  if (model.start !== null)
    return (
      <>
        <PageHead title={model.start.heading} lede={model.lede} />
        <Start start={model.start} />
      </>
    );
  return (
    <>
      <PageHead title={model.title} lede={model.lede} />
      <Part margin={proved.margin} note={proved.since}>
        <h2>{proved.heading}</h2>
        {proved.rows.length === 0 ? (
          <p>{proved.empty}</p>
        ) : (
          <>
            <ProvedTable proved={proved} />
            <ProvedBlocks proved={proved} />
          </>
        )}
        {proved.download === null ? null : (
          <p className={styles.download}>
            <a href={proved.download.href}>{proved.download.label}</a>
          </p>
        )}
        {proved.seen === null ? null : (
          <form
            action={seenAction}
            method={typeof seenAction === "string" ? "post" : undefined}
            className={styles.seen}
          >
            <button type="submit" className="do">
              {proved.seen.label}
            </button>
            <p>{proved.seen.explains}</p>
          </form>
        )}
      </Part>
      {watch === null ? null : (
        <Part margin={watch.margin}>
          <h2>{watch.heading}</h2>
          <ul className={styles.settle}>
            {watch.items.map((item) => (
              <li key={item.fundamental.href}>
                <Link prefetch={false} href={item.student.href}>
                  <strong>{item.student.label}</strong>
                </Link>{" "}
                <Link prefetch={false} href={item.fundamental.href}>
                  {item.fundamental.label}
                </Link>{" "}
                {item.text}
              </li>
            ))}
          </ul>
        </Part>
      )}
      {next === null ? null : (
        <Part margin={next.margin}>
          <h2>{next.heading}</h2>
          <p>{next.text}</p>
          <p>
            <Link prefetch={false} className="do" href={next.link.href}>
              {next.link.label}
            </Link>
          </p>
        </Part>
      )}
      <Part margin={evidence.margin} explains={evidence.explains}>
        <h2>{evidence.heading}</h2>
        <div className={styles.tools}>
          <ul className={styles.key}>
            {evidence.key.map((item) => (
              <li key={item.glyph}>
                <Glyph glyph={item.glyph} /> {item.label}
              </li>
            ))}
          </ul>
          <Choices {...evidence.sort} />
          <a className={styles.download} href={evidence.download.href}>
            {evidence.download.label}
          </a>
        </div>
        <RosterTable evidence={evidence} />
        <RosterBlocks evidence={evidence} />
        {evidence.pages === null ? null : <Choices {...evidence.pages} />}
      </Part>
      {settle === null ? null : (
        <Part margin={settle.margin}>
          <h2>{settle.heading}</h2>
          <ul className={styles.settle}>
            {settle.items.map((item) => (
              <li key={item.href}>
                <Link prefetch={false} href={item.href}>
                  <strong>{item.student}</strong>
                </Link>{" "}
                {item.text}
              </li>
            ))}
          </ul>
        </Part>
      )}
    </>
  );
}
