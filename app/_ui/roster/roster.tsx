import Link from "next/link";
import type { NotedStudents, RosterPage } from "@/lib/report/page-model";
import { Choices } from "../choices/choices";
import type { FormAction } from "../form/form";
import { Glyph } from "../glyph/glyph";
import { PageHead, Part } from "../part/part";
import { BriefKnown, BriefLists, BriefNext } from "./brief";
import { drawRows } from "./drawn-rows";
import { ProvedBlocks, ProvedTable } from "./proved-table";
import styles from "./roster.module.css";
import { RosterBlocks } from "./roster-blocks";
import { RosterTable } from "./roster-table";
import { NobodyFound, RosterTools, type ViewActions } from "./roster-tools";

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

function Noted({ noted }: { readonly noted: NotedStudents | null | undefined }) {
  if (!noted) return null;
  return (
    <Part margin={noted.margin}>
      {noted.heading === "" ? null : <h2>{noted.heading}</h2>}
      <ul className={styles.settle}>
        {noted.items.map(({ student, text }) => (
          <li key={`${student.href} ${text}`}>
            <Link prefetch={false} href={student.href}>
              <strong>{student.label}</strong>
            </Link>{" "}
            {text}
          </li>
        ))}
      </ul>
      {noted.more === "" ? null : <p>{noted.more}</p>}
    </Part>
  );
}

function Pages({ pages }: { readonly pages: NonNullable<RosterPage["evidence"]["pages"]> }) {
  const { before, next } = pages;
  return (
    <div className={styles.pages}>
      <p>{pages.state}</p>
      <Choices label={pages.label} links={pages.links} />
      {[before, next].map((link) =>
        link === null ? null : (
          <Link key={link.label} prefetch={false} href={link.href} className={styles.download}>
            {link.label}
          </Link>
        ),
      )}
    </div>
  );
}

function Evidence({
  evidence,
  departed,
  actions,
}: {
  readonly evidence: RosterPage["evidence"];
  readonly departed: RosterPage["departed"];
  readonly actions: ViewActions;
}) {
  const { tools } = evidence;
  const rows = drawRows(evidence);
  return (
    <div id="roster">
      <Part margin={evidence.margin} explains={evidence.explains}>
        <h2>{evidence.heading}</h2>
        <RosterTools tools={tools} actions={actions} />
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
        {tools.none === null ? (
          <>
            <RosterTable evidence={evidence} rows={rows} />
            <RosterBlocks columns={evidence.columns} rows={rows} more={evidence.margin} />
          </>
        ) : (
          <NobodyFound none={tools.none} />
        )}
        {evidence.pages === null ? null : <Pages pages={evidence.pages} />}
        {departed === null ? null : (
          <p>
            <Link prefetch={false} href={departed.href}>
              {departed.label}
            </Link>
          </p>
        )}
      </Part>
    </div>
  );
}

/** Every student: what is newly proved, one thing to do next, the evidence in strips, what would settle the rest. */
export function Roster({
  model,
  seenAction,
  dealtAction,
  viewActions,
}: {
  readonly model: RosterPage;
  readonly seenAction: FormAction;
  readonly dealtAction: FormAction;
  readonly viewActions: ViewActions;
}) {
  const { proved, brief, families, evidence, settle, consents, departed } = model;
  if (model.start !== null)
    return (
      <>
        <PageHead title={model.start.heading} lede={model.lede}>
          {model.notice ? <p role="status">{model.notice}</p> : null}
        </PageHead>
        <Start start={model.start} />
      </>
    );
  return (
    <>
      <PageHead title={model.title} lede={model.lede}>
        {model.notice ? <p role="status">{model.notice}</p> : null}
        <a className={styles.download} href={evidence.skip.href}>
          {evidence.skip.label}
        </a>
      </PageHead>
      <Noted noted={model.inherited} />
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
      {brief === undefined ? null : <BriefNext brief={brief} action={dealtAction} />}
      {brief === undefined ? null : <BriefKnown known={brief.known} />}
      {brief === undefined ? null : <BriefLists brief={brief} action={dealtAction} />}
      <Noted noted={model.drillsDue} />
      <Noted noted={families} />
      <Noted noted={consents} />
      <Evidence evidence={evidence} departed={departed} actions={viewActions} />
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
          {settle.more ? <p>{settle.more}</p> : null}
        </Part>
      )}
    </>
  );
}
