"use client";

import { useEffect, useRef, useState } from "react";
import type { CaptureAnswer as Answer } from "@/lib/report/capture-answer-model";
import { isTypedEarly } from "../keep/form-entries";
import styles from "./capture-answer.module.css";

/** Asks the server what the films of a form can show, as it stands. */
export type AskCaptures = (data: FormData) => Promise<readonly Answer[]>;

/** Typing rests this long before the server is asked, in milliseconds. */
const REST = 250;

/** The answer as the form stands: the server's own at first, anew after each change of this view's fields. */
function useAnswer(first: Answer, ask: AskCaptures) {
  const [answer, setAnswer] = useState(first);
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    const form = place.current?.closest("form");
    if (!form) return;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let asked = 0;
    const isOurs = (name: string): boolean => name.endsWith(`.${first.view}`);
    const now = async () => {
      asked += 1;
      const mine = asked;
      // An answer that the server can't give leaves the last one; the form itself is not touched.
      const answers = await ask(new FormData(form)).catch(() => []);
      const next = answers.find((each) => each.view === first.view);
      if (next && mine === asked) setAnswer(next);
    };
    const listen = (event: Event) => {
      if (!isOurs((event.target as HTMLInputElement | null)?.name ?? "")) return;
      clearTimeout(timer);
      timer = setTimeout(now, REST);
    };
    form.addEventListener("input", listen);
    // What was chosen before the scripts ran has been heard by nobody.
    if (isTypedEarly(form, isOurs)) timer = setTimeout(now, REST);
    return () => {
      clearTimeout(timer);
      form.removeEventListener("input", listen);
    };
  }, [ask, first.view]);
  return { answer, place };
}

/** What the film gives each fundamental, one step away: in sight at once where one of them can't be used. */
function Rows({ answer }: { readonly answer: Answer }) {
  return (
    <details open={answer.rows.some((row) => row.use === "aside")}>
      <summary>{answer.caption}</summary>
      <table aria-label={answer.caption}>
        <thead>
          <tr>
            {answer.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {answer.rows.map((row) => (
            <tr key={row.name} className={styles[row.use]}>
              <th scope="row">{row.name}</th>
              <td>{row.said}</td>
              <td className={styles.number}>{row.doubt}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

/** What a film can show of each fundamental; it follows the form while scripts run. */
export function CaptureAnswer({ first, ask }: { readonly first: Answer; readonly ask: AskCaptures }) {
  const { answer, place } = useAnswer(first, ask);
  return (
    <section ref={place} className={styles.answer} aria-live="polite">
      <p className={styles.heading}>{answer.heading}</p>
      {answer.next === "" ? null : <p className={styles.next}>{answer.next}</p>}
      {answer.notes.map((note) => (
        <p key={note} className={styles.note}>
          {note}
        </p>
      ))}
      {answer.rows.length === 0 ? null : <Rows answer={answer} />}
    </section>
  );
}
