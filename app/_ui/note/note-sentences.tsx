import { Fragment, type ReactNode } from "react";
import type { NoteAnswer, NoteChoice, NoteRow } from "@/lib/report/note-answer-model";
import styles from "./note-answer.module.css";

/** How one thing that can be said is drawn: a button or a box. */
type DrawChoice = (choice: NoteChoice) => ReactNode;

function Choices(props: { readonly choices: readonly NoteChoice[]; readonly draw: DrawChoice }) {
  return props.choices.map((choice) => <Fragment key={choice.value}>{props.draw(choice)}</Fragment>);
}

/** Choices that are one step away. */
function Further(props: {
  readonly summary: string;
  readonly choices: readonly NoteChoice[];
  readonly draw: DrawChoice;
}) {
  const { summary, choices, draw } = props;
  return (
    <details>
      <summary>{summary}</summary>
      <div className={styles.choices}>
        <Choices choices={choices} draw={draw} />
      </div>
    </details>
  );
}

function Row(props: { readonly row: NoteRow; readonly moreLabel: string; readonly draw: DrawChoice }) {
  const { row, moreLabel, draw } = props;
  return (
    <li className={styles[row.state]}>
      <p>
        <q>{row.word}</q>: {row.said}
      </p>
      <div className={styles.choices}>
        {row.counts === null ? null : <Further summary={row.counts.summary} choices={row.counts.choices} draw={draw} />}
        <Choices choices={row.choices} draw={draw} />
        {row.more.length === 0 ? null : <Further summary={moreLabel} choices={row.more} draw={draw} />}
      </div>
    </li>
  );
}

/** What was read in each sentence of a note, what can be said to it, and what is asked. */
export function NoteSentences({ answer, choice }: { readonly answer: NoteAnswer; readonly choice: DrawChoice }) {
  return (
    <>
      <p className={styles.heading}>{answer.heading}</p>
      {answer.sentences.map((sentence, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a sentence may be said twice.
        <div key={`${at} ${sentence.text}`} className={styles.sentence}>
          <p className={styles.text}>{sentence.text}</p>
          <ul>
            {sentence.rows.map((row, place) => (
              // A row that says otherwise is a new one, so that what was open on it is shut again.
              // biome-ignore lint/suspicious/noArrayIndexKey: a word may be said twice.
              <Row key={`${place} ${row.word} ${row.said}`} row={row} moreLabel={answer.moreLabel} draw={choice} />
            ))}
          </ul>
        </div>
      ))}
      {answer.asks.map((text) => (
        <p key={text} className={styles.ask}>
          {text}
        </p>
      ))}
    </>
  );
}

/** Where corrections that hold for every note are listed; it opens beside a form that is being filled in. */
export function NoteRemembered({ answer }: { readonly answer: NoteAnswer }) {
  return answer.remembered === null ? null : (
    <p>
      <a href={answer.remembered.href} target="_blank" rel="noreferrer">
        {answer.remembered.label}
      </a>
    </p>
  );
}
