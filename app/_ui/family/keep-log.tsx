"use client";

import { useEffect, useRef, useState } from "react";
import type { FamilyKeep } from "@/lib/report/family-practice-model";
import { type Kept, NOTHING_KEPT, type PracticeKeeper, startPracticeKeeper } from "./keep-practice";
import styles from "./log.module.css";
import { sayLog } from "./log-words";

/** Keeps on this phone what can't be sent, says so, and sends it later. Without scripts nothing of it is there. */
export function KeepLog({ keep }: { readonly keep: FamilyKeep }) {
  const place = useRef<HTMLDivElement>(null);
  const keeper = useRef<PracticeKeeper | null>(null);
  const [kept, setKept] = useState<Kept>(NOTHING_KEPT);
  useEffect(() => {
    const section = place.current?.closest("section");
    if (!section) return;
    const started = startPracticeKeeper(section, keep, setKept);
    keeper.current = started;
    return () => started.stop();
  }, [keep]);
  const { words } = keep;
  return (
    <div ref={place} className={styles.kept}>
      <p aria-live="polite">{kept.said}</p>
      {kept.pain === "no" ? null : (
        <div className={styles.stop}>
          <p>{words.pain}</p>
          <p>{words["pain.again"]}</p>
          <button type="button" className="say" onClick={() => keeper.current?.endPain()}>
            {words.over}
          </button>
        </div>
      )}
      {kept.logs.length === 0 ? null : (
        <>
          <h3>{words.heading}</h3>
          <ul>
            {kept.logs.map((log) => (
              <li key={log.key}>
                {sayLog(keep, log)}
                {log.why === "" ? null : <p className={styles.refusal}>{log.why}</p>}
                <button type="button" className="say" onClick={() => keeper.current?.drop(log.key)}>
                  {words.drop.replace("{said}", sayLog(keep, log))}
                </button>
              </li>
            ))}
          </ul>
          <p>
            <button type="button" className="do" onClick={() => keeper.current?.send()}>
              {words.send}
            </button>
          </p>
        </>
      )}
    </div>
  );
}
