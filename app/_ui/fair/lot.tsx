import type { LotPart } from "@/lib/report/fair-tests-model";
import type { FormAction } from "../form/form";
import { Part } from "../part/part";
import { Press } from "../plan/press";

/** The lot above the form that gives a drill: it may be drawn, or has been. */
export function Lot({ model, draw }: { readonly model: LotPart; readonly draw: FormAction }) {
  return (
    <Part margin={model.margin}>
      <h2>{model.heading}</h2>
      {model.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {model.press === null ? null : <Press model={model.press} action={draw} />}
    </Part>
  );
}
