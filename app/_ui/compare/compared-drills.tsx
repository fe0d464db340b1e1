import type { ComparedDrillsPage } from "@/lib/report/compared-drills-model";
import { Choices } from "../choices/choices";
import { Verdict } from "../glyph/glyph";
import { GroupFilter } from "../group-filter/group-filter";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Ways } from "../part/ways";
import { Table } from "../table/table";
import styles from "./compare.module.css";
import { EffectMark, LegendMark } from "./effect-mark";

function Evidence({ part }: { readonly part: NonNullable<ComparedDrillsPage["evidence"]> }) {
  const cells = part.drawn.map((drawn) => <EffectMark key={drawn.sentence} drawn={drawn} />);
  return (
    <Part margin={part.margin} explains={part.explains}>
      <h2>{part.heading}</h2>
      <ul className={styles.legend}>
        {part.legend.map(({ look, label }) => (
          <li key={look}>
            <LegendMark look={look} />
            {label}
          </li>
        ))}
      </ul>
      <Table model={part.table} drawn={{ label: part.drawnLabel, cells }} />
      <Table model={part.details} />
    </Part>
  );
}

function Half({ heading, texts }: { readonly heading: string; readonly texts: readonly string[] }) {
  return (
    <div className={styles.half}>
      <h3>{heading}</h3>
      {texts.map((text) => (
        <p key={text}>{text}</p>
      ))}
    </div>
  );
}

/** How the drills that were given for one fundamental compare: what is proved, all of them with their doubt, what it hangs on. */
export function ComparedDrills({ model }: { readonly model: ComparedDrillsPage }) {
  const { proved, evidence, sensitivity, care, method } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        {model.fundamentals === null ? null : <Choices {...model.fundamentals} />}
        {model.clubs === null ? null : <Choices {...model.clubs} />}
        {model.filter === null ? null : <GroupFilter filter={model.filter} />}
        <Ways links={model.ways} />
      </PageHead>
      {proved === null ? null : (
        <Part margin={proved.margin} explains={proved.explains}>
          <h2>{proved.heading}</h2>
          {proved.items.map((item) => (
            <div key={item.heading}>
              <h3>
                <Verdict glyph="gain" word={item.heading} />
              </h3>
              <p>{item.text}</p>
            </div>
          ))}
          {proved.texts.map((text) => (
            <p key={text}>{text}</p>
          ))}
        </Part>
      )}
      {evidence === null ? null : <Evidence part={evidence} />}
      {care === null ? null : (
        <Part margin={care.margin}>
          <div className={styles.pair}>
            <Half heading={care.heading} texts={care.texts} />
            <Half heading={care.checkedHeading} texts={care.checked} />
          </div>
        </Part>
      )}
      {sensitivity === null ? null : (
        <Part margin={sensitivity.margin} explains={sensitivity.explains}>
          <h2>{sensitivity.heading}</h2>
          <Table model={sensitivity.table} />
        </Part>
      )}
      {method === null ? null : (
        <Part margin={method.margin}>
          <h2>{method.heading}</h2>
          <p>{method.text}</p>
        </Part>
      )}
    </>
  );
}
