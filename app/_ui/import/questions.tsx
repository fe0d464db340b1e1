import type { ImportPage } from "@/lib/report/form-model";
import { Part } from "../part/part";
import styles from "./import.module.css";

type Asked = NonNullable<NonNullable<ImportPage["preview"]>["questions"]>;

/** One question per kind of fault; one answer settles every row of its kind. */
export function Questions({ questions }: { readonly questions: Asked }) {
  return (
    <Part margin={questions.margin} explains={questions.explains}>
      <h2>{questions.heading}</h2>
      <p className={styles.columns} aria-hidden="true">
        {questions.columns.map((column) => (
          <span key={column}>{column}</span>
        ))}
      </p>
      {questions.items.map((question) => (
        <fieldset key={question.id} className={styles.question}>
          <legend>
            <span className={styles.number}>{question.number}</span> {question.heading}
          </legend>
          <p className={styles.rows}>{question.rows}</p>
          <p className={styles.why}>{question.why}</p>
          <div className={styles.options}>
            {question.options.map((option) => (
              <div key={option.value}>
                <label className={styles.option}>
                  <input
                    type="radio"
                    name={question.name}
                    value={option.value}
                    defaultChecked={question.value === option.value}
                  />
                  {option.label}
                </label>
                {option.text === null ? null : (
                  <label className={styles.text}>
                    {option.text.label}
                    <input name={option.text.name} defaultValue={option.text.value} />
                  </label>
                )}
              </div>
            ))}
          </div>
        </fieldset>
      ))}
      <p>
        <button type="submit" className="do" name="intent" value="answer">
          {questions.submit}
        </button>
      </p>
    </Part>
  );
}
