"use client";

import { createContext, type ReactNode, useContext } from "react";

/** What the failure page says. It is handed down beforehand, since after a failure nothing can be asked for. */
export interface FailureText {
  readonly title: string;
  readonly happened: string;
  readonly reference: string;
  readonly again: string;
}

const Context = createContext<FailureText>({ title: "", happened: "", reference: "", again: "" });

export function FailureWords({ words, children }: { readonly words: FailureText; readonly children: ReactNode }) {
  return <Context value={words}>{children}</Context>;
}

export function useFailureWords(): FailureText {
  return useContext(Context);
}
