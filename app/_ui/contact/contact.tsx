import type { ContactPart } from "@/lib/report/page-model";
import { SaveChart } from "../chart-file/save-chart";
import { Facts } from "../facts/facts";
import { Verdict } from "../glyph/glyph";
import { Part } from "../part/part";
import { SeasonAxis } from "../small-chart/season-axis";
import { SmallChart } from "../small-chart/small-chart";
import { Table } from "../table/table";
import styles from "./contact.module.css";
import { ShareMark } from "./share-mark";

/** Solid strikes, beneath the fundamentals. */
export function Contact({ model }: { readonly model: ContactPart }) {
  const { judged, table, download } = model;
  return (
    <Part margin={model.margin} explains={model.explains}>
      <h2>{model.heading}</h2>
      {judged === null ? null : <Verdict glyph={judged.glyph} word={judged.word} />}
      {model.texts.map((text) => (
        <p key={text}>{text}</p>
      ))}
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
    </Part>
  );
}
