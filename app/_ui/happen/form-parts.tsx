import type { FormModel } from "@/lib/report/form-model";
import { Field } from "../form/field";
import type { FormAction } from "../form/form";
import { Problems } from "../form/problems";
import { KeptForm } from "../keep/kept-form";
import { Part } from "../part/part";
import styles from "./happen.module.css";

/** A long form at the foot of its page: its parts stand under each other, each with what is to be known of it beside it. */
export function FormParts({ model, action }: { readonly model: FormModel; readonly action: FormAction }) {
  const [first, ...others] = model.parts;
  if (first === undefined) return null;
  const fields = (part: FormModel["parts"][number]) => (
    <div className={styles.fields}>
      {part.fields.map((field) => (
        <Field key={field.name} field={field} />
      ))}
    </div>
  );
  return (
    <KeptForm className={styles.form} keep={model.keep} hidden={model.hidden} action={action}>
      <Part margin={first.margin} explains={first.explains}>
        <h2>{model.heading}</h2>
        <p>{model.explains}</p>
        {model.refusal === "" ? null : (
          <Problems refusal={model.refusal} fields={model.parts.flatMap((part) => part.fields)} />
        )}
        {fields(first)}
      </Part>
      {others.map((part) => (
        <Part key={part.margin} margin={part.margin} explains={part.explains}>
          {fields(part)}
        </Part>
      ))}
      <Part margin="">
        <p>
          <button type="submit" className="do">
            {model.submit}
          </button>
        </p>
      </Part>
    </KeptForm>
  );
}
