import type { FormModel } from "@/lib/report/form-model";
import { Field } from "../form/field";
import { Problems } from "../form/problems";
import { Refresh } from "../form/refresh";
import { KeptForm } from "../keep/kept-form";
import { Part } from "../part/part";
import styles from "./plan.module.css";

/** The form in which a plan is changed, worked out anew and kept as told. */
export function PlanForm(props: {
  readonly model: FormModel;
  readonly keep: (data: FormData) => Promise<void>;
  readonly workOut: (data: FormData) => Promise<void>;
}) {
  const { model, keep, workOut } = props;
  const fields = model.parts.flatMap((part) => part.fields);
  const again = model.parts[0]?.refresh ?? "";
  return (
    <div id="change" className={styles.screen}>
      <KeptForm keep={model.keep} hidden={model.hidden} action={keep}>
        <Part margin={model.heading} explains={model.explains}>
          {model.refusal === "" ? null : <Problems refusal={model.refusal} fields={fields} />}
          <div className={styles.fields}>
            {fields.map((field) => (
              <Field key={field.name} field={field} />
            ))}
          </div>
          <div className={styles.buttons}>
            <button type="submit" className="do">
              {model.submit}
            </button>
            <Refresh label={again} action={workOut} />
            <noscript>
              <button type="submit" formAction={workOut} className="say">
                {again}
              </button>
            </noscript>
          </div>
        </Part>
      </KeptForm>
    </div>
  );
}
