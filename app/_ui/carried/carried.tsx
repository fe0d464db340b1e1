import type { SeasonPage } from "@/lib/report/page-model";
import { Part } from "../part/part";
import { Table } from "../table/table";

/** What another academy said of a student, as it said it. */
export function Carried({ carried }: { readonly carried: NonNullable<SeasonPage["carried"]> }) {
  return (
    <Part margin={carried.margin}>
      <h2>{carried.heading}</h2>
      {carried.paragraphs.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <Table model={carried.table} />
    </Part>
  );
}
