import Link from "next/link";
import type { ReactNode } from "react";
import type { SeasonPage } from "@/lib/report/page-model";
import { Carried } from "../carried/carried";
import { SaveChart } from "../chart-file/save-chart";
import { Choices } from "../choices/choices";
import { Contact } from "../contact/contact";
import { Verdict } from "../glyph/glyph";
import { BackLink } from "../part/back-link";
import { Fold } from "../part/fold";
import { PageHead, Part } from "../part/part";
import { SeasonAxis } from "../small-chart/season-axis";
import { Table } from "../table/table";
import { Chain } from "./chain";
import { FirstWeek } from "./first-week";
import { Keep } from "./keep";
import { Next } from "./next";
import styles from "./season.module.css";

/** The time axis of all charts, once under the last. */
function Axis({ evidence }: { readonly evidence: SeasonPage["evidence"] }) {
  const days = evidence.groups[0]?.rows[0]?.chart.x;
  return days === undefined ? null : (
    <div className={styles.axis}>
      <SeasonAxis
        days={days}
        under={{
          drills: evidence.drills ?? [],
          events: evidence.events ?? [],
          practice: evidence.practice ?? null,
        }}
      />
    </div>
  );
}

/** Beneath the charts: their days, with drills, events and practice. */
function Under({ model: { evidence, drills, folds } }: { readonly model: SeasonPage }) {
  const { files, marked, practice } = evidence;
  if (files === null && drills === null && !marked && !practice) return null;
  return (
    <Fold label={folds.axis}>
      <Axis evidence={evidence} />
      {files === null ? null : <SaveChart files={files} />}
      {marked ? <p>{marked}</p> : null}
      {practice ? <p>{practice.summary}</p> : null}
      {drills === null ? null : <Table model={drills} />}
    </Fold>
  );
}

/** A student's season. */
export function Season({ model, prescribe }: { readonly model: SeasonPage; readonly prescribe?: ReactNode }) {
  const keep = model.keep === null ? null : <Keep keep={model.keep} fold={model.folds.keep} />;
  // An alarm or a release asks for something; what only stays as it is comes after the evidence.
  const asks =
    model.keep?.release || model.keep?.items.some(({ state }) => state === "watch")
      ? ("yes" as const)
      : ("no" as const);
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        {model.clubGroups === null ? null : <Choices {...model.clubGroups} />}
        {model.notices.map((notice) => (
          <p key={notice}>{notice}</p>
        ))}
        <p className={styles.actions}>
          {model.first.map((link) => (
            <a key={link.href} href={link.href}>
              {link.label}
            </a>
          ))}
        </p>
      </PageHead>
      <Part margin={model.proved.margin}>
        <h2>{model.proved.heading}</h2>
        {model.proved.items.length === 0 ? <p>{model.proved.empty}</p> : null}
        {model.proved.items.map((item) => (
          <div key={item.heading}>
            <h3>
              <Link prefetch={false} className={styles.proved} href={item.href}>
                <Verdict glyph={item.glyph} word={item.heading} />
              </Link>
            </h3>
            <p>{item.text}</p>
          </div>
        ))}
      </Part>
      {model.firstWeek === null ? null : <FirstWeek model={model.firstWeek} />}
      {model.next === null ? null : <Next next={model.next} />}
      {prescribe}
      {asks === "yes" ? keep : null}
      <Part margin={model.evidence.margin} explains={model.evidence.explains}>
        <h2>{model.evidence.heading}</h2>
        <Chain chain={model.chain} folds={model.folds} />
        <Under model={model} />
      </Part>
      {asks === "yes" ? null : keep}
      {model.tradeOffs === null ? null : (
        <Part margin={model.tradeOffs.margin}>
          <h2>{model.tradeOffs.heading}</h2>
          {model.tradeOffs.texts.map((text) => (
            <p key={text}>{text}</p>
          ))}
        </Part>
      )}
      {model.contact === null ? null : <Contact model={model.contact} fold={model.folds.contact} />}
      {model.settle === null ? null : (
        <Part margin={model.settle.margin}>
          <h2>{model.settle.heading}</h2>
          <Fold label={model.folds.settle}>
            <Table model={model.settle.table} />
          </Fold>
        </Part>
      )}
      {model.carried ? <Carried carried={model.carried} /> : null}
      <Part margin={model.sessions.margin}>
        <h2>{model.sessions.heading}</h2>
        {model.sessions.table.rows.length === 0 ? (
          <Table model={model.sessions.table} />
        ) : (
          <Fold label={model.folds.sessions}>
            <Table model={model.sessions.table} />
          </Fold>
        )}
      </Part>
      <section id="everything">
        <Part margin={model.actionsHead.margin}>
          <h2>{model.actionsHead.heading}</h2>
          <p className={styles.actions}>
            {model.actions.map((action) => (
              <a key={action.href} href={action.href}>
                {action.label}
              </a>
            ))}
          </p>
          {model.cautions.map((caution) => (
            <p key={caution} className={styles.caution}>
              {caution}
            </p>
          ))}
        </Part>
      </section>
    </>
  );
}
