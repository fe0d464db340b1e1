import type { ReactNode } from "react";
import type { TellPart as Model } from "@/lib/report/tell-model";
import { LinkRow } from "../link-row/link-row";
import { Part } from "../part/part";

/** A heading with sentences, ways on, and what else belongs to it. */
export function TellPart({ part, children }: { readonly part: Model; readonly children?: ReactNode }) {
  return (
    <Part margin={part.margin}>
      <h2>{part.heading}</h2>
      {part.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <LinkRow links={part.links} />
      {children}
    </Part>
  );
}
