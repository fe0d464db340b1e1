import type { DrillSeasonsPage } from "@/lib/report/drill-seasons-model";
import { Choices } from "../choices/choices";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Ways } from "../part/ways";
import { Table } from "../table/table";
import { SeasonsChart } from "./seasons-chart";

/** One drill: the seasons of whoever had it, moved to one first day, the table of them, and what it can't say. */
export function DrillSeasons({ model }: { readonly model: DrillSeasonsPage }) {
  const { seasons, care } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        {model.clubs === null ? null : <Choices {...model.clubs} />}
        <Ways links={model.ways} />
      </PageHead>
      {seasons === null ? null : (
        <Part margin={seasons.margin} explains={seasons.explains}>
          <h2>{seasons.heading}</h2>
          <SeasonsChart chart={seasons.chart} />
          <Table model={seasons.table} />
        </Part>
      )}
      <Part margin={care.margin}>
        {care.lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </Part>
    </>
  );
}
