import type { FieldModel } from "@/lib/report/form-model";
import styles from "./form.module.css";

const INPUT_TYPES = {
  text: "text",
  number: "text",
  date: "date",
  email: "email",
  password: "password",
  "new-password": "password",
  code: "text",
} as const;

/** What a browser, or what keeps somebody's passwords, may fill in; it is also what lets one paste there. */
const FILLED_BY: Readonly<Record<string, string>> = {
  email: "username",
  password: "current-password",
  "new-password": "new-password",
  code: "one-time-code",
};

function describedBy(field: FieldModel): string | undefined {
  const ids = [field.hint === "" ? "" : `hint-${field.name}`, field.error === "" ? "" : `error-${field.name}`];
  return ids.filter((id) => id !== "").join(" ") || undefined;
}

function Notes({ field }: { readonly field: FieldModel }) {
  return (
    <>
      {field.hint === "" ? null : (
        <p id={`hint-${field.name}`} className={styles.hint}>
          {field.hint}
        </p>
      )}
      {field.error === "" ? null : (
        <p id={`error-${field.name}`} className={styles.error}>
          {field.error}
        </p>
      )}
    </>
  );
}

function Choices({ field }: { readonly field: FieldModel }) {
  const type = field.kind === "checkbox" ? "checkbox" : "radio";
  return (
    <fieldset className={styles.choices} id={`field-${field.name}`} tabIndex={-1} aria-describedby={describedBy(field)}>
      <legend>{field.label}</legend>
      {field.options.map((option) => (
        <label key={option.value} className={styles.choice}>
          <input
            type={type}
            name={field.name}
            value={option.value}
            defaultChecked={field.value.split(",").includes(option.value)}
          />
          {option.label}
        </label>
      ))}
      <Notes field={field} />
    </fieldset>
  );
}

/** One field with its label above and what is wrong with it beneath. */
export function Field({ field }: { readonly field: FieldModel }) {
  if (field.kind === "radio" || field.kind === "checkbox") return <Choices field={field} />;
  const common = {
    id: `field-${field.name}`,
    name: field.name,
    defaultValue: field.value,
    "aria-describedby": describedBy(field),
    "aria-invalid": field.error === "" ? undefined : true,
    "aria-required": field.required === "yes" ? true : undefined,
  } as const;
  return (
    <div className={styles.field}>
      <label htmlFor={common.id}>{field.label}</label>
      {field.kind === "select" ? (
        <select {...common}>
          {field.options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      ) : field.kind === "textarea" ? (
        <textarea {...common} rows={3} />
      ) : (
        <input
          {...common}
          type={INPUT_TYPES[field.kind]}
          inputMode={field.kind === "number" ? "decimal" : undefined}
          autoComplete={FILLED_BY[field.kind]}
        />
      )}
      <Notes field={field} />
    </div>
  );
}
