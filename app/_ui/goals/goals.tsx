import type { FormModel } from "@/lib/report/form-model";
import type { HappenPage as HappenPageModel } from "@/lib/report/happen-model";
import type { Link } from "@/lib/report/page-model";
import { Choices } from "../choices/choices";
import type { FormAction } from "../form/form";
import { HappenPage } from "../happen/happen-page";
import { PartForm } from "../happen/part-form";

/** A page of goal bands: ways to the others, what holds and held, and the form that sets the next one. */
export function Goals(props: {
  readonly page: HappenPageModel;
  readonly form: FormModel;
  readonly ways: readonly {
    readonly label: string;
    readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
  }[];
  readonly action: FormAction;
}) {
  return (
    <HappenPage model={props.page} before={props.ways.map((way) => <Choices key={way.label} {...way} />)}>
      <PartForm model={props.form} action={props.action} />
    </HappenPage>
  );
}
