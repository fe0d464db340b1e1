import type { Link } from "./basic-model";

/** One fundamental that is owned and only kept. */
export interface KeptItem {
  readonly fundamentalId: string;
  readonly name: string;
  readonly href: string;
  /** `watch`: an early alarm; `check`: no film for six weeks; `rests`: settled, read now and then; `keeps`: looked at in turn. */
  readonly state: "watch" | "check" | "keeps" | "rests";
  readonly stateWord: string;
  /** Since when, and what the state means for the next films. */
  readonly texts: readonly string[];
  /** The drill that helped, in a short dose; null: nothing is to be done. */
  readonly dose: { readonly text: string; readonly action: Link } | null;
}

/** What is owned, to keep; and what was released for the next. For the coach alone. */
export interface KeepPart {
  readonly margin: string;
  readonly explains: string;
  readonly heading: string;
  /** The academy's rule in words. */
  readonly rule: string;
  /** What became owned lately and what comes next; null: no such thing. */
  readonly release: { readonly heading: string; readonly text: string; readonly action: Link | null } | null;
  readonly items: readonly KeptItem[];
  /** What it costs that some rest; empty: none does. */
  readonly cost: string;
}
