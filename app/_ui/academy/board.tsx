import type { BoardSheet } from "@/lib/report/build-board";
import { Facts } from "../facts/facts";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";

/** A sheet of an academy's counts; printed, it is the sheet alone. */
export function Board({ model }: { readonly model: BoardSheet }) {
  return (
    <div data-paper="alone">
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      {model.facts.length === 0 ? null : (
        <Part margin={model.margin}>
          <Facts facts={model.facts} arrangement="wide" />
        </Part>
      )}
      {model.lines.length === 0 ? null : (
        <Part margin={model.reading}>
          {model.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </Part>
      )}
    </div>
  );
}
