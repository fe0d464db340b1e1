import type { ContactPart } from "@/lib/report/page-model";
import { SaveChart } from "../chart-file/save-chart";
import { Facts } from "../facts/facts";
import { Verdict } from "../glyph/glyph";
import { Fold } from "../part/fold";
import { Part } from "../part/part";
import { SeasonAxis } from "../small-chart/season-axis";
import { SmallChart } from "../small-chart/small-chart";
import { Table } from "../table/table";
import styles from "./contact.module.css";
import { ShareMark } from "./share-mark";

function Rest({ model }: { readonly model: ContactPart }) {
  const { judged, table, download } = model;
  return (
    <>
      {judged === null ? null : (
        <>
          <ShareMark strip={judged.strip} />
          <Facts facts={judged.facts} />
          <div className={styles.chart}>
            <SmallChart chart={judged.chart} />
            <SeasonAxis days={judged.chart.x} />
          </div>
          {judged.files === null ? null : <SaveChart files={judged.files} />}
        </>
      )}
      {table === null ? null : <Table model={table} />}
      {download === null ? null : (
        <p>
          <a className={styles.link} href={download.href}>
            {download.label}
          </a>
        </p>
      )}
    </>
  );
}

/** Solid strikes, beneath the fundamentals. */
export function Contact(props: {
  readonly model: ContactPart;
  /** The words that open what lies behind the share on a phone; absent: it is there at once. */
  readonly fold?: string;
}) {
  const { model, fold } = props;
  const texts = model.texts.map((text) => <p key={text}>{text}</p>);
  const folds = fold !== undefined && model.judged !== null;
  return (
    <Part margin={model.margin} explains={model.explains} explainsIn={folds ? "fold" : "margin"}>
      <h2>{model.heading}</h2>
      {model.judged === null ? null : <Verdict glyph={model.judged.glyph} word={model.judged.word} />}
      {folds ? (
        <Fold label={fold} explains={model.explains}>
          {texts}
          <Rest model={model} />
        </Fold>
      ) : (
        <>
          {texts}
          <Rest model={model} />
        </>
      )}
    </Part>
  );
}
