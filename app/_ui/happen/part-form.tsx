import type { FormModel } from "@/lib/report/form-model";
import { Field } from "../form/field";
import type { FormAction } from "../form/form";
import { Problems } from "../form/problems";
import { Refresh } from "../form/refresh";
import { KeptForm } from "../keep/kept-form";
import { Part } from "../part/part";
import styles from "./happen.module.css";

/** A form that is a part of its page and not a page of its own; its fields stand together. */
export function PartForm(props: {
  readonly model: FormModel;
  readonly action: FormAction;
  /** Makes the form anew from what it says; absent: nothing follows from it. */
  readonly refresh?: (data: FormData) => Promise<void>;
}) {
  const { model, action, refresh } = props;
  const again = model.parts[0]?.refresh ?? "";
  const fields = model.parts.flatMap((part) => part.fields);
  return (
    <KeptForm className={styles.form} keep={model.keep} hidden={model.hidden} action={action}>
      <Part margin={model.heading} explains={model.explains}>
        {model.refusal === "" ? null : <Problems refusal={model.refusal} fields={fields} />}
        {model.parts.map((part) => (part.explains === "" ? null : <p key={part.explains}>{part.explains}</p>))}
        <div className={styles.fields}>
          {fields.map((field) => (
            <div key={field.name} className={field.kind === "checkbox" ? styles.whole : undefined}>
              <Field field={field} />
            </div>
          ))}
        </div>
        {again === "" || refresh === undefined ? null : (
          <p>
            <Refresh label={again} action={refresh} />
            <noscript>
              <button type="submit" formAction={refresh} className="say">
                {again}
              </button>
            </noscript>
          </p>
        )}
        <p>
          <button type="submit" className="do">
            {model.submit}
          </button>
        </p>
      </Part>
    </KeptForm>
  );
}
