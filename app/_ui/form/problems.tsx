import styles from "./form.module.css";

/** Why a form was sent back, and a way to each field that has to be mended. */
export function Problems({
  refusal,
  fields,
}: {
  readonly refusal: string;
  /** Of the form, in their order; those without an error are passed over. */
  readonly fields: readonly { readonly name: string; readonly label: string; readonly error: string }[];
}) {
  return (
    <div className={styles.problems} role="alert">
      <p>{refusal}</p>
      <ul>
        {fields.map((field) =>
          field.error === "" ? null : (
            <li key={field.name}>
              <a href={`#field-${field.name}`}>{field.label}</a> {field.error}
            </li>
          ),
        )}
      </ul>
    </div>
  );
}
