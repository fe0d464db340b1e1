import Link from "next/link";
import type { ChartWords, FundamentalPage } from "@/lib/report/page-model";
import { SaveChart } from "../chart-file/save-chart";
import { Choices } from "../choices/choices";
import { Facts } from "../facts/facts";
import type { FormAction } from "../form/form";
import { Verdict } from "../glyph/glyph";
import { SwapIn } from "../live-chart/swap-in";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { StaticChart } from "../static-chart/static-chart";
import { Table } from "../table/table";
import styles from "./fundamental.module.css";
import { IntervalMark } from "./interval-marks";

function Doubt({ doubt }: { readonly doubt: NonNullable<FundamentalPage["doubt"]> }) {
  return (
    <Part margin={doubt.margin}>
      <h2>{doubt.heading}</h2>
      <div className={styles.bar} aria-hidden="true">
        {doubt.parts.map((part) => (
          <span key={part.name} className={styles[part.pattern]} style={{ flexGrow: part.share }} />
        ))}
      </div>
      <dl className={styles.parts}>
        {doubt.parts.map((part) => (
          <div key={part.name}>
            <dt>
              <span className={`${styles.key} ${styles[part.pattern]}`} aria-hidden="true" />
              {part.name}
            </dt>
            <dd>{part.shareLabel}</dd>
            <dd>{part.sizeLabel}</dd>
          </div>
        ))}
      </dl>
      {doubt.square.map((text) => (
        <p key={text}>{text}</p>
      ))}
    </Part>
  );
}

function BeforeAfter({ part }: { readonly part: NonNullable<FundamentalPage["beforeAfter"]> }) {
  const { intervals } = part;
  const drawn = intervals && {
    label: intervals.label,
    cells: intervals.rows.map((row) => <IntervalMark key={row.value} intervals={intervals} row={row} />),
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
      <button type="submit" className="do">
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
}) {
  const { model, words, askAction } = props;
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
        {verdict.watch === "" ? null : <p>{verdict.watch}</p>}
        <Facts facts={verdict.facts} />
        {verdict.detail.length === 0 ? null : (
          <details className={styles.details}>
            <summary>{verdict.detailLabel}</summary>
            {verdict.detail.map((line) => (
              <p key={line}>{line}</p>
            ))}
            <p>
              <Link prefetch={false} className={styles.link} href={verdict.decides.href}>
                {verdict.decides.label}
              </Link>
            </p>
          </details>
        )}
        {model.notices.length === 0 ? null : (
          <ul className={styles.notices}>
            {model.notices.map((notice) => (
              <li key={notice}>{notice}</li>
            ))}
          </ul>
        )}
      </Part>
      <Part margin={evidence.margin} explains={evidence.explains}>
        <h2>{evidence.chart.heading}</h2>
        <SwapIn chart={evidence.chart} title={words.liveChart}>
          <StaticChart chart={evidence.chart} />
        </SwapIn>
        <details className={styles.details}>
          <summary>{words.table}</summary>
          <Table model={evidence.table} />
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
      {model.settle === null ? null : (
        <Part margin={model.settle.margin}>
          <h2>{model.settle.heading}</h2>
          {model.settle.texts.map((text) => (
            <p key={text}>{text}</p>
          ))}
          {model.settle.asks.map((ask) => (
            <Ask key={ask.state} ask={ask} track={model.track} action={askAction} />
          ))}
        </Part>
      )}
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
