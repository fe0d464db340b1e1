import type { ArchiveImportPage } from "@/lib/report/archive-import-model";
import { PageHead, Part } from "../part/part";
import styles from "./import.module.css";

type Asked = NonNullable<ArchiveImportPage["asked"]>["fields"][number];

function Answer({ field }: { readonly field: Asked }) {
  const { name, value, options } = field;
  if (options === undefined)
    return <input id={name} name={name} defaultValue={value} maxLength={60} autoComplete="off" />;
  return (
    <select id={name} name={name} defaultValue={value}>
      {options.map((option) => (
        <option key={option.value} value={option.value}>
          {option.label}
        </option>
      ))}
    </select>
  );
}

/** An uploaded archive: what is asked, what stands in the way, what differs, and what will be saved. */
export function ArchivePreview(props: {
  readonly model: ArchiveImportPage;
  readonly action: (data: FormData) => Promise<void>;
}) {
  const { model, action } = props;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} />
      <form action={action}>
        <input type="hidden" name="draftId" value={model.draftId} />
        {model.asked === null ? null : (
          <Part margin={model.asked.margin} explains={model.asked.why}>
            <h2>{model.asked.heading}</h2>
            {model.asked.fields.map((field) => (
              <p key={field.name}>
                <label htmlFor={field.name}>{field.label}</label> <Answer field={field} />
              </p>
            ))}
            <p className={styles.actions}>
              <button type="submit" className="say" name="intent" value="answer">
                {model.asked.submit}
              </button>
            </p>
          </Part>
        )}
        {model.lists.map((list) => (
          <Part key={list.heading} margin={list.margin}>
            <h2>{list.heading}</h2>
            <ul className={styles.lines}>
              {list.items.map((item, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: lines of a finished preview never move.
                <li key={at}>{item}</li>
              ))}
            </ul>
          </Part>
        ))}
        <p className={styles.actions}>
          {model.submit === null ? null : (
            <button type="submit" className="do" name="intent" value="import">
              {model.submit}
            </button>
          )}
          <button type="submit" className="say" name="intent" value="drop">
            {model.drop}
          </button>
        </p>
      </form>
    </>
  );
}
