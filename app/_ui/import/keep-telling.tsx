"use client";

import { useEffect, useState } from "react";
import styles from "./past-import.module.css";

const EVERY_MS = 1000;

/** Asks how far it is each second, says it, and at the end asks for the page anew. */
export function KeepTelling({ says, poll }: { readonly says: string; readonly poll: string }) {
  const [said, setSaid] = useState(says);
  useEffect(() => {
    const timer = setInterval(async () => {
      const answer = await fetch(poll).catch(() => null);
      if (!answer?.ok) return;
      const told = (await answer.json()) as { readonly says: string; readonly ended: string };
      if (told.ended === "yes") {
        clearInterval(timer);
        window.location.reload();
      } else setSaid(told.says);
    }, EVERY_MS);
    return () => clearInterval(timer);
  }, [poll]);
  return (
    <p className={styles.says} role="status">
      {said}
    </p>
  );
}
