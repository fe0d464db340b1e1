import type { FormModel } from "@/lib/report/form-model";
import { Field } from "../form/field";
import type { FormAction } from "../form/form";
import { KeptForm } from "../keep/kept-form";
import { Part } from "../part/part";

/** The same stills for another reader: a part of the page of a finished draw, not a page of its own. */
export function SecondReader({ model, action }: { readonly model: FormModel; readonly action: FormAction }) {
  return (
    <KeptForm keep={model.keep} hidden={model.hidden} action={action}>
      <Part margin={model.heading} explains={model.explains}>
        {model.refusal === "" ? null : <p role="alert">{model.refusal}</p>}
        {model.parts
          .flatMap((part) => part.fields)
          .map((field) => (
            <Field key={field.name} field={field} />
          ))}
        <p>
          <button type="submit" className="do">
            {model.submit}
          </button>
        </p>
      </Part>
    </KeptForm>
  );
}
