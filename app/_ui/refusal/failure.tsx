"use client";

import { useFailureWords } from "./failure-words";
import styles from "./refusal.module.css";

/** A page that could not be made: what to do, and the reference under which the log tells why. */
export function Failure({ reference, onAgain }: { readonly reference: string; onAgain(): void }) {
  const words = useFailureWords();
  return (
    <main className={styles.refusal}>
      <h1>{words.title}</h1>
      <p>{words.happened}</p>
      {reference !== "" && (
        <p>
          {words.reference} <code>{reference}</code>
        </p>
      )}
      <button type="button" className={styles.again} onClick={onAgain}>
        {words.again}
      </button>
    </main>
  );
}
