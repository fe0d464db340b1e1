"use client";

import { type RefObject, useEffect, useRef, useState } from "react";
import type { NoteAnswer as Answer, NoteChoice } from "@/lib/report/note-answer-model";
import { isTypedEarly } from "../keep/form-entries";
import styles from "./note-answer.module.css";
import { NoteRemembered, NoteSentences } from "./note-sentences";

/** Asks the server what the note of a form says, as it stands; what was tapped is remembered. Null: none is given. */
export type AskNote = (data: FormData) => Promise<Answer | null>;

/** Typing rests this long before the server is asked, in milliseconds. */
const REST = 250;

/** The answer as the form stands, and what asks anew; `null` on the server and where no script runs. */
function useAnswer(first: Answer, ask: AskNote, place: RefObject<HTMLElement | null>) {
  const [answer, setAnswer] = useState(first);
  const { fields } = first;
  const [live, setLive] = useState<((choice?: NoteChoice) => void) | null>(null);
  useEffect(() => {
    const form = place.current?.closest("form");
    if (!form) return;
    const names = [fields.note, fields.solid, fields.balls];
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
      if (!names.includes((event.target as HTMLInputElement | null)?.name ?? "")) return;
      clearTimeout(timer);
      timer = setTimeout(now, REST);
    };
    form.addEventListener("input", listen);
    // What was typed before the scripts ran has been heard by nobody.
    if (isTypedEarly(form, (name) => names.includes(name))) timer = setTimeout(now, REST);
    setLive(() => now);
    return () => {
      clearTimeout(timer);
      form.removeEventListener("input", listen);
    };
  }, [ask, place, fields]);
  const { value: counted } = answer.counted;
  const known = useRef(counted);
  useEffect(() => {
    if (known.current === counted) return;
    known.current = counted;
    // What was tapped is kept with the rest of the form, as if it had been typed.
    place.current?.dispatchEvent(new Event("input", { bubbles: true }));
  }, [counted, place]);
  return { answer, live };
}

/** One tap: a button while scripts run, else a box that goes with the form. */
function Choice({ choice, tap }: { readonly choice: NoteChoice; readonly tap: ((choice: NoteChoice) => void) | null }) {
  return tap ? (
    <button type="button" className={`say ${styles.choice}`} aria-label={choice.spoken} onClick={() => tap(choice)}>
      {choice.label}
    </button>
  ) : (
    <label className={styles.box}>
      <input type="checkbox" name={choice.name} value={choice.value} aria-label={choice.spoken} />
      {choice.label}
    </label>
  );
}

/** Puts the offered numbers into their fields, as if they had been typed. */
function fillIn(form: HTMLFormElement | null | undefined, { fields, offer }: Answer): void {
  for (const name of ["solid", "balls"] as const) {
    const input = form?.elements.namedItem(fields[name]);
    if (!(input instanceof HTMLInputElement) || offer === null) continue;
    input.value = offer[name];
    input.dispatchEvent(new Event("input", { bubbles: true }));
  }
}

/** What a note says of strikes, beside each of its sentences; it follows the form while scripts run. */
export function NoteAnswer({ first, ask }: { readonly first: Answer; readonly ask: AskNote }) {
  const place = useRef<HTMLElement>(null);
  const { answer, live } = useAnswer(first, ask, place);
  const { offer, counted } = answer;
  return (
    <section ref={place} className={styles.answer} aria-live="polite">
      {counted.value === "" ? null : <input type="hidden" name={counted.name} value={counted.value} />}
      <NoteSentences answer={answer} choice={(choice) => <Choice choice={choice} tap={live} />} />
      {offer === null ? null : (
        <Choice choice={offer.choice} tap={live && (() => fillIn(place.current?.closest("form"), answer))} />
      )}
      <NoteRemembered answer={answer} />
    </section>
  );
}
