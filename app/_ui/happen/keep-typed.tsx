"use client";

import { type ReactNode, useEffect, useRef, useState } from "react";

/** Keeps what was typed into a form so far; says whether it could. */
export type KeepAction = (data: FormData) => Promise<"kept" | "not-kept">;

/**
 * Sends what stands in a form to be kept whenever a field is left, so that nothing typed waits for the button; without
 * scripts the button alone keeps it.
 */
export function KeepTyped(props: {
  readonly action: KeepAction;
  readonly words: { readonly kept: string; readonly notKept: string };
  readonly children: ReactNode;
}) {
  const { action, words } = props;
  const box = useRef<HTMLDivElement>(null);
  const [said, setSaid] = useState("");
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const keep = async (event: Event): Promise<void> => {
      const form = event.target instanceof HTMLInputElement ? event.target.form : null;
      if (!form) return;
      try {
        setSaid((await action(new FormData(form))) === "kept" ? words.kept : words.notKept);
      } catch {
        setSaid(words.notKept);
      }
    };
    element.addEventListener("change", keep);
    return () => element.removeEventListener("change", keep);
  }, [action, words.kept, words.notKept]);
  return (
    <div ref={box}>
      {props.children}
      <p role="status">{said}</p>
    </div>
  );
}
