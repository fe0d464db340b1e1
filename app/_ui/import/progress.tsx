"use client";

import { useEffect, useState } from "react";
import type { ImportProgress } from "@/lib/report/form-model";
import styles from "./import.module.css";
import own from "./mapping.module.css";

/** Between two looks at how far the reading is. */
const LOOK_MS = 1000;

interface Told {
  readonly state: string;
  readonly text: string;
  readonly read: number;
  readonly of: number;
}

/** How far the reading of a file is. Without scripts a link looks again; with them the figures move by themselves. */
export function Progress({
  progress,
  action,
}: {
  readonly progress: ImportProgress;
  readonly action: (data: FormData) => Promise<void>;
}) {
  const [told, setTold] = useState<Told>(progress);
  const running = progress.state === "running";
  useEffect(() => {
    if (!running) return;
    const looking = setInterval(async () => {
      const answer = await fetch(progress.from, { cache: "no-store" }).catch(() => null);
      if (!answer?.ok) return;
      const next = (await answer.json()) as Told;
      if (next.state === "running") setTold(next);
      else {
        clearInterval(looking);
        location.reload();
      }
    }, LOOK_MS);
    return () => clearInterval(looking);
  }, [running, progress.from]);
  return (
    <form action={action} className={own.progress}>
      <input type="hidden" name="draftId" value={progress.draftId} />
      {running ? (
        <>
          <p role="status">{told.text}</p>
          <progress
            aria-label={told.text}
            max={told.of > 0 ? told.of : undefined}
            value={told.of > 0 ? told.read : undefined}
          />
          <p className={styles.actions}>
            <button type="submit" className="say" name="intent" value="stop">
              {progress.stop}
            </button>
            <a href={progress.again.href}>{progress.again.label}</a>
          </p>
        </>
      ) : (
        <p className={styles.actions}>
          <button type="submit" className="do" name="intent" value="read">
            {progress.readAgain}
          </button>
          <button type="submit" className="say" name="intent" value="drop">
            {progress.drop}
          </button>
        </p>
      )}
    </form>
  );
}
