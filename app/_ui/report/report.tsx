import type { ReportedFundamental, ReportPage } from "@/lib/report/report-model";
import { Contact } from "../contact/contact";
import { Facts } from "../facts/facts";
import { Verdict } from "../glyph/glyph";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { SeasonAxis } from "../small-chart/season-axis";
import { StaticChart } from "../static-chart/static-chart";
import { Table } from "../table/table";
import { ProvedPart } from "./proved-part";
import styles from "./report.module.css";

function Reported({ item }: { readonly item: ReportedFundamental }) {
  return (
    <section className={styles.fundamental} aria-label={item.name}>
      <h3>{item.name}</h3>
      <p>{item.position}</p>
      <p>
        <Verdict glyph={item.glyph} word={item.heading} size={16} />
      </p>
      <Facts facts={item.facts} />
      {item.texts.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <StaticChart chart={item.chart} print="paper" />
    </section>
  );
}

function Texts({ part }: { readonly part: ReportPage["keep"] }) {
  return (
    <Part margin={part.margin}>
      <div className={styles.whole}>
        <h2>{part.heading}</h2>
        {part.texts.map((text) => (
          <p key={text}>{text}</p>
        ))}
      </div>
    </Part>
  );
}

/** Everything measured, a line each, and when what was worked on. */
function Glance({ glance }: { readonly glance: NonNullable<ReportPage["glance"]> }) {
  const { table, axis } = glance;
  return (
    <Part margin={glance.margin}>
      <h2>{glance.heading}</h2>
      <Table model={table} />
      <div className={styles.axis}>
        <SeasonAxis
          days={axis.days}
          under={{ drills: axis.drills ?? [], events: axis.events ?? [], practice: axis.practice ?? null }}
        />
      </div>
      {axis.marked ? <p>{axis.marked}</p> : null}
      {axis.practice ? <p>{axis.practice.summary}</p> : null}
    </Part>
  );
}

/** What is read first: what was found, what comes next, and everything in a line each. On paper a sheet of its own. */
function Summary({ model }: { readonly model: ReportPage }) {
  const { next, proved, glance } = model;
  return (
    <div className={styles.summary}>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        <p>{model.counts}</p>
        <p className={styles.screen}>{model.print}</p>
      </PageHead>
      <ProvedPart proved={proved} className={styles.whole} />
      {next === null ? null : (
        <Part margin={next.margin}>
          <h2>{next.heading}</h2>
          <p>{next.text}</p>
        </Part>
      )}
      {glance === null ? null : <Glance glance={glance} />}
      {/* On paper the lines above say it. */}
      <div className={styles.screen}>
        <Texts part={model.keep} />
      </div>
    </div>
  );
}

/** What is looked up: strikes, what happened, the camera, the method. On paper in small type, its long tables left out. */
function Rest({ model }: { readonly model: ReportPage }) {
  const { events, settle } = model;
  return (
    <div className={styles.rest}>
      {model.contact === null ? null : (
        <div className={styles.strikes}>
          <Contact model={model.contact} />
        </div>
      )}
      <Part margin={events.margin}>
        <h2>{events.heading}</h2>
        {events.tables.length === 0 ? <p>{events.none}</p> : null}
        {events.tables.map((table) => (
          <Table key={table.caption} model={table} />
        ))}
      </Part>
      <Texts part={model.camera} />
      {settle === null ? null : (
        <div className={styles.screen}>
          <Part margin={settle.margin}>
            <h2>{settle.heading}</h2>
            <Table model={settle.table} />
          </Part>
        </div>
      )}
      <Texts part={model.method} />
      <Part margin={model.cautions.margin}>
        {model.cautions.texts.map((text) => (
          <p key={text}>{text}</p>
        ))}
      </Part>
    </div>
  );
}

/** The season of one student as it goes on paper; on a screen the same, in the same order. */
export function Report({ model }: { readonly model: ReportPage }) {
  const { fundamentals } = model;
  return (
    <div className={styles.report}>
      <Summary model={model} />
      <div className={styles.each}>
        <Part margin={fundamentals.margin} explains={fundamentals.explains}>
          <h2>{fundamentals.heading}</h2>
          {fundamentals.items.map((item) => (
            <Reported key={item.id} item={item} />
          ))}
        </Part>
      </div>
      <Rest model={model} />
    </div>
  );
}
