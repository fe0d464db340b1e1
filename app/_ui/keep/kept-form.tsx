import type { ReactNode } from "react";
import type { KeepModel } from "@/lib/report/keep-model";
import { HiddenFields } from "../form/hidden-fields";
import { KeepDraft } from "./keep-draft";
import { KeptForms } from "./kept-forms";

/**
 * The form element of every form with typed fields: it is kept while somebody types where its model says so, and made anew
 * with each page, so that a field shows what is kept and not what the browser remembers of an earlier page.
 */
export function KeptForm(props: {
  readonly keep: KeepModel | undefined;
  readonly hidden: readonly { readonly name: string; readonly value: string }[];
  /** A path, or a function on the server. */
  readonly action: string | ((data: FormData) => Promise<void>);
  readonly className?: string;
  /** Stands above the line that says how it is kept. */
  readonly head?: ReactNode;
  readonly children: ReactNode;
}) {
  const { keep, action } = props;
  return (
    <>
      {keep ? <KeptForms keep={keep} /> : null}
      <form
        key={keep?.writer}
        className={props.className}
        action={action}
        method={typeof action === "string" ? "post" : undefined}
        autoComplete={keep ? "off" : undefined}
      >
        {props.head}
        <HiddenFields fields={props.hidden} />
        {keep ? <KeepDraft keep={keep} /> : null}
        {props.children}
      </form>
    </>
  );
}
