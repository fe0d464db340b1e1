import type { FamilyPractice, FamilyTap, FamilyWeekDay } from "@/lib/report/family-practice-model";
import type { FamilyPress } from "@/lib/report/family-press-model";
import { Field } from "../form/field";
import { HiddenFields } from "../form/hidden-fields";
import { KeepLog } from "./keep-log";
import styles from "./log.module.css";
import { Press } from "./press";

function Week({ days }: { readonly days: readonly FamilyWeekDay[] }) {
  return (
    <ol className={styles.week}>
      {days.map((day) => (
        <li key={day.spoken} aria-current={day.when === "today" ? "date" : undefined}>
          <span className="said">{day.spoken}</span>
          <span aria-hidden="true">{day.weekday}</span>
          <b aria-hidden="true">{day.said}</b>
          <small aria-hidden="true">{day.unit}</small>
        </li>
      ))}
    </ol>
  );
}

function Undo({ presses }: { readonly presses: readonly FamilyPress[] }) {
  return presses.map((press) => <Press key={press.hidden[0]?.value} press={press} look="say" />);
}

function Refusal({ text }: { readonly text: string }) {
  return text === "" ? null : (
    <p role="alert" className={styles.refusal}>
      {text}
    </p>
  );
}

function Tap({ tap }: { readonly tap: FamilyTap }) {
  const { hurts, stop } = tap;
  return (
    <form action={tap.action} method="post" data-log="tap" className={styles.tap}>
      <Refusal text={tap.refusal} />
      <HiddenFields fields={tap.hidden} />
      <fieldset className={styles.hurts}>
        <legend>{hurts.label}</legend>
        {hurts.options.map(({ value, label }) => (
          <label key={value}>
            <input type="radio" name={hurts.name} value={value} />
            {label}
          </label>
        ))}
      </fieldset>
      <fieldset className={styles.taps}>
        <legend>{tap.day}</legend>
        {tap.buttons.map(({ value, said, whom }) => (
          <button key={value} type="submit" name="minutes" value={value}>
            <b>{said}</b> <small>{whom}</small>
          </button>
        ))}
      </fieldset>
      <div className={styles.stop}>
        <p>
          <strong>{stop.heading}</strong>
        </p>
        {stop.lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <label>
          {stop.place.label}
          <select name={stop.place.name}>
            {stop.place.options.map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </select>
        </label>
        <button type="submit" className="do">
          {stop.submit}
        </button>
      </div>
    </form>
  );
}

function Exact({ form }: { readonly form: FamilyPractice["form"] }) {
  return (
    <details open={form.open === "open"} className={styles.more}>
      <summary>{form.more}</summary>
      <form action={form.action} method="post" data-log="exact" className={styles.log}>
        <Refusal text={form.refusal} />
        <HiddenFields fields={form.hidden} />
        {form.fields.map((field) => (
          <Field key={field.name} field={field} />
        ))}
        <p>
          <button type="submit" className="do">
            {form.submit}
          </button>
        </p>
      </form>
    </details>
  );
}

/** The last days of practice, what writes today's down in one tap, and the form for all that is more exact. */
export function Log({ practice }: { readonly practice: FamilyPractice }) {
  const { tap, rests, older, keep } = practice;
  return (
    <>
      <h2 id="log">{practice.heading}</h2>
      <Week days={practice.week} />
      <Undo presses={practice.undo} />
      {older === null ? null : (
        <details className={styles.older}>
          <summary>{older.label}</summary>
          <Undo presses={older.undo} />
        </details>
      )}
      <KeepLog keep={keep} />
      {tap === null ? <p className={styles.rests}>{rests}</p> : <Tap tap={tap} />}
      <Exact form={practice.form} />
    </>
  );
}
