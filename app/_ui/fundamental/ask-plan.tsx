"use client";

import { type FormEvent, useEffect, useId, useRef, useState } from "react";
import type { AskPlanPart, PlanSaid } from "@/lib/report/ask-plan-model";
import type { FundamentalPage } from "@/lib/report/page-model";
import { Facts } from "../facts/facts";
import type { FormAction } from "../form/form";
import styles from "./ask-plan.module.css";

/** Asks the server what films would tell; null: it has no answer. */
export type AskFilms = (data: FormData) => Promise<PlanSaid | null>;

/** A slider rests this long before the server is asked, in milliseconds. */
const REST = 200;

/** The answer of the films chosen: the page's own at first, anew whenever a slider comes to rest. */
function useAnswer(part: AskPlanPart, track: FundamentalPage["track"], ask: AskFilms) {
  const [said, setSaid] = useState(part.said);
  const [state, setState] = useState<"said" | "asking" | "failed">("said");
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const asked = useRef(0);
  useEffect(() => () => clearTimeout(timer.current), []);
  const askFor = (form: FormData): void => {
    clearTimeout(timer.current);
    setState("asking");
    asked.current += 1;
    const mine = asked.current;
    timer.current = setTimeout(async () => {
      form.set("studentId", track.studentId);
      form.set("fundamentalId", track.fundamentalId);
      const next = await ask(form).catch(() => null);
      if (mine !== asked.current) return;
      if (next) setSaid(next);
      setState(next ? "said" : "failed");
    }, REST);
  };
  return { said, state, askFor };
}

/**
 * What other films would tell: a form that asks the page anew, and sliders in the place of its lists once scripts run. Every
 * chance comes from the server.
 */
export function AskPlan(props: {
  readonly part: AskPlanPart;
  readonly track: FundamentalPage["track"];
  readonly ask: AskFilms;
  /** Plans the films that were answered. */
  readonly take: FormAction;
}) {
  const { part, track, ask, take } = props;
  const id = useId();
  const [live, setLive] = useState(false);
  const [places, setPlaces] = useState(part.choices.map((choice) => choice.at));
  const { said, state, askFor } = useAnswer(part, track, ask);
  useEffect(() => setLive(true), []);
  const move = (nth: number, to: number): void => {
    const next = places.map((place, at) => (at === nth ? to : place));
    setPlaces(next);
    const form = new FormData();
    for (const { name, value } of part.hidden) form.set(name, value);
    part.choices.forEach((choice, at) => {
      form.set(choice.name, choice.options[next[at] ?? 0]?.value ?? "");
    });
    askFor(form);
  };
  const stay = (event: FormEvent): void => {
    if (live) event.preventDefault();
  };
  return (
    <>
      <form method="get" className={styles.ask} onSubmit={stay} data-asking={live ? "live" : "plain"}>
        <h3>{part.heading}</h3>
        <p className={styles.quiet}>{part.explains}</p>
        {part.hidden.map((field) => (
          <input key={field.name} type="hidden" name={field.name} value={field.value} />
        ))}
        <div className={styles.choices}>
          {part.choices.map((choice, nth) => {
            const place = places[nth] ?? 0;
            const label = choice.options[place]?.label ?? "";
            if (choice.options.length === 1)
              return (
                <div key={choice.name} className={styles.choice}>
                  <span className={styles.name}>{choice.label}</span>
                  <span>{label}</span>
                </div>
              );
            return (
              <div key={choice.name} className={styles.choice}>
                <label className={styles.name} htmlFor={`${id}-${choice.name}`}>
                  {choice.label}
                </label>
                {live ? (
                  <>
                    <input
                      id={`${id}-${choice.name}`}
                      type="range"
                      min={0}
                      max={choice.options.length - 1}
                      step={1}
                      value={place}
                      aria-valuetext={label}
                      onChange={(event) => move(nth, Number(event.currentTarget.value))}
                    />
                    <span className={styles.value} aria-hidden="true">
                      {label}
                    </span>
                  </>
                ) : (
                  <select
                    id={`${id}-${choice.name}`}
                    name={choice.name}
                    defaultValue={choice.options[choice.at]?.value}
                  >
                    {choice.options.map((option) => (
                      <option key={option.value} value={option.value}>
                        {option.label}
                      </option>
                    ))}
                  </select>
                )}
              </div>
            );
          })}
        </div>
        {live ? null : (
          <button type="submit" className="say">
            {part.submit}
          </button>
        )}
        <section className={styles.said} aria-live="polite" aria-busy={state === "asking"} aria-label={part.heading}>
          <p>{said.plan}</p>
          <Facts facts={said.facts} />
          <p className={styles.quiet}>{said.enough}</p>
          {state === "failed" ? <p role="alert">{part.failed}</p> : null}
        </section>
      </form>
      {said.takes === null || state !== "said" ? null : (
        <form action={take} method={typeof take === "string" ? "post" : undefined} className={styles.take}>
          {said.takes.hidden.map((field) => (
            <input key={field.name} type="hidden" name={field.name} value={field.value} />
          ))}
          <button type="submit" className="say">
            {said.takes.label}
          </button>
          <p className={styles.quiet}>{said.takes.explains}</p>
        </form>
      )}
    </>
  );
}
