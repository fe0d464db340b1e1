"use client";

import { type RefObject, useEffect, useRef, useState } from "react";
import type { NoteAnswer as Answer, NoteChoice, NoteRow } from "@/lib/report/note-answer-model";
import styles from "./note-answer.module.css";

/** Asks the server what the note of a form says, as it stands; what was tapped is remembered. */
export type AskNote = (data: FormData) => Promise<Answer>;

/** Typing rests this long before the server is asked, in milliseconds. */
const REST = 250;

const FIELDS = ["note", "solid", "balls"];

/** The answer as the form stands, and what asks anew; `null` on the server and where no script runs. */
function useAnswer(first: Answer, ask: AskNote, place: RefObject<HTMLElement | null>) {
  const [answer, setAnswer] = useState(first);
  const [live, setLive] = useState<((choice?: NoteChoice) => void) | null>(null);
  useEffect(() => {
    const form = place.current?.closest("form");
    if (!form) return;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let asked = 0;
    const now = async (choice?: NoteChoice) => {
      asked += 1;
      const mine = asked;
      const data = new FormData(form);
      if (choice) data.append(choice.name, choice.value);
      // An answer that the server can't give leaves the last one; the form itself is not touched.
      const next = await ask(data).catch(() => null);
      if (next && mine === asked) setAnswer(next);
    };
    const listen = (event: Event) => {
      if (!FIELDS.includes((event.target as HTMLInputElement | null)?.name ?? "")) return;
      clearTimeout(timer);
      timer = setTimeout(now, REST);
    };
    form.addEventListener("input", listen);
    setLive(() => now);
    return () => {
      clearTimeout(timer);
      form.removeEventListener("input", listen);
    };
  }, [ask, place]);
  return { answer, live };
}

/** One tap: a button while scripts run, else a box that goes with the form. */
function Choice({ choice, tap }: { readonly choice: NoteChoice; readonly tap: ((choice: NoteChoice) => void) | null }) {
  return tap ? (
    <button type="button" className={`say ${styles.choice}`} onClick={() => tap(choice)}>
      {choice.label}
    </button>
  ) : (
    <label className={styles.box}>
      <input type="checkbox" name={choice.name} value={choice.value} />
      {choice.label}
    </label>
  );
}

function Row(props: {
  readonly row: NoteRow;
  readonly moreLabel: string;
  readonly tap: ((choice: NoteChoice) => void) | null;
}) {
  const { row, moreLabel, tap } = props;
  return (
    <li className={styles[row.state]}>
      <p>
        <q>{row.word}</q>: {row.said}
      </p>
      <div className={styles.choices}>
        {row.choices.map((choice) => (
          <Choice key={choice.value} choice={choice} tap={tap} />
        ))}
        {row.more.length === 0 ? null : (
          <details>
            <summary>{moreLabel}</summary>
            <div className={styles.choices}>
              {row.more.map((choice) => (
                <Choice key={choice.value} choice={choice} tap={tap} />
              ))}
            </div>
          </details>
        )}
      </div>
    </li>
  );
}

/** Puts the offered numbers into their fields, as if they had been typed. */
function fillIn(form: HTMLFormElement | null | undefined, offer: NonNullable<Answer["offer"]>): void {
  for (const name of ["solid", "balls"] as const) {
    const input = form?.elements.namedItem(name);
    if (!(input instanceof HTMLInputElement)) continue;
    input.value = offer[name];
    input.dispatchEvent(new Event("input", { bubbles: true }));
  }
}

/** What a note says of strikes, beside each of its sentences; it follows the form while scripts run. */
export function NoteAnswer({ first, ask }: { readonly first: Answer; readonly ask: AskNote }) {
  const place = useRef<HTMLElement>(null);
  const { answer, live } = useAnswer(first, ask, place);
  const { offer } = answer;
  return (
    <section ref={place} className={styles.answer} aria-live="polite">
      <p className={styles.heading}>{answer.heading}</p>
      {answer.sentences.map((sentence, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a sentence may be said twice.
        <div key={`${at} ${sentence.text}`} className={styles.sentence}>
          <p className={styles.text}>{sentence.text}</p>
          <ul>
            {sentence.rows.map((row, place) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a word may be said twice.
              <Row key={`${place} ${row.word}`} row={row} moreLabel={answer.moreLabel} tap={live} />
            ))}
          </ul>
        </div>
      ))}
      {answer.asks.map((text) => (
        <p key={text} className={styles.ask}>
          {text}
        </p>
      ))}
      {offer === null ? null : (
        <Choice choice={offer.choice} tap={live && (() => fillIn(place.current?.closest("form"), offer))} />
      )}
      {answer.remembered === null ? null : (
        <p>
          <a href={answer.remembered.href} target="_blank" rel="noreferrer">
            {answer.remembered.label}
          </a>
        </p>
      )}
    </section>
  );
}
