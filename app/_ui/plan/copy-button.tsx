"use client";

import { useEffect, useState } from "react";
import type { CopyText } from "@/lib/report/plan-model";

/** Copies a text. Without scripts it isn't there, and the text is selected by hand. */
export function CopyButton({ text, words }: { readonly text: string; readonly words: CopyText["copy"] }) {
  const [live, setLive] = useState(false);
  const [said, setSaid] = useState("");
  useEffect(() => setLive(true), []);
  if (!live) return null;
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid(words.done);
    } catch {
      // A page that isn't served over TLS may have no clipboard at all.
      setSaid(words.failed);
    }
  };
  return (
    <p>
      <button type="button" className="do" onClick={copy}>
        {words.label}
      </button>{" "}
      <span role="status">{said}</span>
    </p>
  );
}
