import type { ClubsBesidePart } from "@/lib/report/clubs-beside-model";
import { Part } from "../part/part";
import { Table } from "../table/table";
import { IntervalMark } from "./interval-marks";

/** One fundamental with each club group, side by side. */
export function ClubsBeside({ part }: { readonly part: ClubsBesidePart }) {
  const cells = part.drawn.map((interval, at) =>
    // biome-ignore lint/suspicious/noArrayIndexKey: rows of a finished table never move.
    interval === null ? null : <IntervalMark key={at} interval={interval} />,
  );
  return (
    <Part margin={part.margin} explains={part.explains}>
      <h2>{part.heading}</h2>
      <Table model={part.table} drawn={{ label: part.drawnLabel, cells }} />
    </Part>
  );
}
