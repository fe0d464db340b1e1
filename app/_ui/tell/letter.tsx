import type { FormModel } from "@/lib/report/form-model";
import type { LetterPage, LetterSheet } from "@/lib/report/tell-model";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { MessageText } from "../plan/message-text";
import { PlanForm } from "../plan/plan-form";
import styles from "./tell.module.css";
import { TellPart } from "./tell-part";

type Send = (data: FormData) => Promise<void>;

function Own({ own, lang }: { readonly own: NonNullable<LetterSheet["own"]>; readonly lang: string }) {
  return (
    <section className={styles.own} aria-label={own.heading}>
      <h3 lang={lang}>{own.heading}</h3>
      {own.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </section>
  );
}

function Sheet({ sheet }: { readonly sheet: LetterSheet }) {
  const own = sheet.own === null ? null : <Own own={sheet.own} lang={sheet.lang} />;
  return (
    <div className={styles.sheet}>
      <Part margin={sheet.margin} explains={sheet.explains}>
        <p className={styles.letterhead}>
          <span>{sheet.from}</span> <span lang={sheet.lang}>{sheet.day}</span>
        </p>
        <h2 lang={sheet.lang}>{sheet.heading}</h2>
        {sheet.own?.place === "first" ? own : null}
        {sheet.paragraphs.map((paragraph) => (
          <p key={paragraph} lang={sheet.lang}>
            {paragraph}
          </p>
        ))}
        {sheet.own?.place === "last" ? own : null}
        <div className={styles.foot} lang={sheet.lang}>
          {sheet.foot.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      </Part>
    </div>
  );
}

/** A season letter: on paper the sheet alone. */
export function Letter(props: {
  readonly model: LetterPage;
  readonly form: FormModel | null;
  readonly actions: { readonly keep: Send; readonly workOut: Send };
}) {
  const { model, form, actions } = props;
  return (
    <div
      className={model.sheet === null ? undefined : styles.printed}
      data-paper={model.sheet === null ? undefined : "alone"}
    >
      <div className={styles.screen}>
        <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
          {model.notices.map((notice) => (
            <p key={notice} role="status">
              {notice}
            </p>
          ))}
        </PageHead>
        {model.refused === null ? null : <TellPart part={model.refused} />}
      </div>
      {model.sheet === null ? null : <Sheet sheet={model.sheet} />}
      {form === null ? null : (
        <div className={styles.screen}>
          <PlanForm model={form} keep={actions.keep} workOut={actions.workOut} />
        </div>
      )}
      {model.copy === null ? null : (
        <div className={styles.screen}>
          <Part margin={model.copy.margin} explains={model.copy.explains}>
            <MessageText model={model.copy.message} />
          </Part>
        </div>
      )}
    </div>
  );
}
