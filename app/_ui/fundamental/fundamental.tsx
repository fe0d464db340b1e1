import Link from "next/link";
import type { ReactNode } from "react";
import type { ChartWords, FundamentalPage } from "@/lib/report/page-model";
import { Carried } from "../carried/carried";
import { SaveChart } from "../chart-file/save-chart";
import { Choices } from "../choices/choices";
import { Facts } from "../facts/facts";
import type { FormAction } from "../form/form";
import { Verdict } from "../glyph/glyph";
import { SwapIn } from "../live-chart/swap-in";
import { BackLink } from "../part/back-link";
import details from "../part/details.module.css";
import { PageHead, Part } from "../part/part";
import { StaticChart } from "../static-chart/static-chart";
import { Table } from "../table/table";
import { type AskFilms, AskPlan } from "./ask-plan";
import { ClubsBeside } from "./clubs-beside";
import { Decided } from "./decided";
import { Doubt } from "./doubt";
import styles from "./fundamental.module.css";
import { IntervalMark } from "./interval-marks";

function BeforeAfter({ part }: { readonly part: NonNullable<FundamentalPage["beforeAfter"]> }) {
  const { intervals } = part;
  const drawn = intervals && {
    label: intervals.label,
    cells: intervals.rows.map((row) => <IntervalMark key={row.value} interval={{ ...intervals, ...row }} />),
  };
  return (
    <Part margin={part.margin}>
      <h2>{part.heading}</h2>
      <Table model={part.table} drawn={drawn} />
    </Part>
  );
}

/** One decision on the track's question: a button and what it does. */
function Ask(props: {
  readonly ask: NonNullable<FundamentalPage["settle"]>["asks"][number];
  readonly track: FundamentalPage["track"];
  readonly action: FormAction;
}) {
  const { ask, track, action } = props;
  return (
    <form action={action} method={typeof action === "string" ? "post" : undefined} className={styles.ask}>
      {Object.entries({ ...track, state: ask.state }).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <button type="submit" className={ask.state === "planned" ? "do" : "say"}>
        {ask.label}
      </button>
      <p>{ask.explains}</p>
    </form>
  );
}

/** One fundamental of one student: what is proved, the evidence, where the doubt comes from, what would settle it. */
export function Fundamental(props: {
  readonly model: FundamentalPage;
  readonly words: ChartWords;
  readonly askAction: FormAction;
  readonly askFilms: AskFilms;
  /** The drill for it. */
  readonly prescribe?: ReactNode;
}) {
  const { model, words, askAction, askFilms } = props;
  const { verdict, evidence } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        {model.clubGroups === null ? null : <Choices {...model.clubGroups} />}
      </PageHead>
      <Part margin={verdict.margin}>
        <p>{verdict.position}</p>
        <h2 className={styles.verdict}>
          <Verdict glyph={verdict.glyph} word={verdict.heading} size={20} />
        </h2>
        {verdict.listing === "" ? null : <p>{verdict.listing}</p>}
        {verdict.reach === "" ? null : <p>{verdict.reach}</p>}
        {verdict.stays ? <p>{verdict.stays}</p> : null}
        {verdict.watch === "" ? null : <p>{verdict.watch}</p>}
        <Facts facts={verdict.facts} />
        <Decided verdict={verdict} />
        {model.notices.length === 0 ? null : (
          <ul className={styles.notices}>
            {model.notices.map((notice) => (
              <li key={notice}>{notice}</li>
            ))}
          </ul>
        )}
      </Part>
      {model.next ? (
        <Part margin={model.next.margin}>
          <h2>{model.next.heading}</h2>
          <p>
            <Link prefetch={false} className={styles.link} href={model.next.link.href}>
              {model.next.link.label}
            </Link>
          </p>
        </Part>
      ) : null}
      {props.prescribe}
      <Part margin={evidence.margin} explains={evidence.explains}>
        <h2>{evidence.chart.heading}</h2>
        <SwapIn chart={evidence.chart} title={words.liveChart}>
          <StaticChart chart={evidence.chart} />
        </SwapIn>
        <details className={details.details}>
          <summary>{words.table}</summary>
          <Table model={evidence.table} />
          {evidence.leads ? <p className={styles.caution}>{evidence.leads}</p> : null}
          {evidence.chart.curve ? <Table model={evidence.chart.curve.table} /> : null}
          {evidence.chart.practice ? <Table model={evidence.chart.practice.table} /> : null}
        </details>
        <p>
          {evidence.links.map((link) => (
            <a key={link.href} className={styles.link} href={link.href}>
              {link.label}
            </a>
          ))}
        </p>
        <SaveChart files={evidence.files} />
      </Part>
      {model.beforeAfter === null ? null : <BeforeAfter part={model.beforeAfter} />}
      {model.doubt === null ? null : <Doubt doubt={model.doubt} />}
      {model.clubsBeside ? <ClubsBeside part={model.clubsBeside} /> : null}
      {model.settle === null ? null : (
        <Part margin={model.settle.margin}>
          <h2>{model.settle.heading}</h2>
          {model.settle.texts.map((text) => (
            <p key={text}>{text}</p>
          ))}
          {model.settle.asks.map((ask) => (
            <Ask key={ask.state} ask={ask} track={model.track} action={askAction} />
          ))}
          {model.settle.asked ? (
            <AskPlan
              key={model.settle.asked.choices.map((choice) => choice.at).join()}
              part={model.settle.asked}
              track={model.track}
              ask={askFilms}
              take={askAction}
            />
          ) : null}
        </Part>
      )}
      {model.carried ? <Carried carried={model.carried} /> : null}
      <Part margin={model.readings.margin}>
        <h2>{model.readings.heading}</h2>
        <Table model={model.readings.table} />
        {model.cautions.map((caution) => (
          <p key={caution} className={styles.caution}>
            {caution}
          </p>
        ))}
      </Part>
    </>
  );
}
