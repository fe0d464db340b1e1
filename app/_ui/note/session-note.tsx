import type { SessionNotePage } from "@/lib/report/note-answer-model";
import type { FormAction } from "../form/form";
import { HiddenFields } from "../form/hidden-fields";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import styles from "./note-answer.module.css";
import { NoteRemembered, NoteSentences } from "./note-sentences";

/** What the note of a session on file says; each choice is a button that sends itself, with scripts or without. */
export function SessionNote({ model, action }: { readonly model: SessionNotePage; readonly action: FormAction }) {
  return (
    <form action={action} method={typeof action === "string" ? "post" : undefined}>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      <HiddenFields fields={model.hidden} />
      <Part margin={model.margin} explains={model.explains}>
        {model.answer === null ? (
          <p>{model.none}</p>
        ) : (
          <section className={styles.answer}>
            <NoteSentences
              answer={model.answer}
              choice={(choice) => (
                <button
                  type="submit"
                  name={choice.name}
                  value={choice.value}
                  aria-label={choice.spoken}
                  className={`say ${styles.choice}`}
                >
                  {choice.label}
                </button>
              )}
            />
            <NoteRemembered answer={model.answer} />
          </section>
        )}
      </Part>
    </form>
  );
}
