import type { BothModel } from "@/lib/report/keep-model";

/** How a form stands, for whoever shows it. */
export interface Standing {
  readonly state: "kept" | "unsent" | "signed-out" | "refused" | "saved" | "changed";
  readonly said: string;
  /** Null: no other window. */
  readonly both: BothModel | null;
}

/** A form that is being kept. */
export interface Keeping {
  /** Puts values in and keeps them. A field that the page doesn't have makes it be made anew, with all that is kept. */
  put(values: ReadonlyMap<string, readonly string[]>, settles: string): Promise<void>;
  /** Whether anything was kept, sent or handed over since it began: from then on the page isn't made anew under somebody's hands. */
  state(): "fresh" | "begun";
  stop(): void;
}
