/** What a film shows of each fundamental, as far as its phone's place is known. */
export interface CaptureAnswer {
  readonly view: string;
  /** Where the phone stood, in one sentence. */
  readonly heading: string;
  readonly caption: string;
  readonly columns: readonly [string, string, string];
  readonly rows: readonly {
    readonly name: string;
    readonly use: "counts" | "taken-out" | "doubt" | "aside";
    readonly said: string;
    /** What the phone's place leaves, ± 95 of 100; empty where the fundamental isn't used. */
    readonly doubt: string;
  }[];
  /** The one thing to move next time. */
  readonly next: string;
  readonly notes: readonly string[];
}
