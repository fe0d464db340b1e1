/** What the writing thread is given; everything else it reads by itself, so that no plan crosses between threads. */
export type ImportTask =
  | {
      readonly kind: "import";
      readonly choice: "demo" | "own";
      /** Whose import; null: a program's. */
      readonly userId: string | null;
      readonly draftId: string;
      readonly batchId: string;
      readonly door: "page" | "command" | "http" | "archive";
      readonly who: string;
      /** Places of `SHARED`. */
      readonly shared: SharedArrayBuffer;
    }
  | {
      readonly kind: "undo";
      readonly choice: "demo" | "own";
      /** Whose import; null: a program's. */
      readonly userId: string | null;
      readonly batchId: string;
      readonly shared: SharedArrayBuffer;
    };

/** A task as the thread gets it: with the memory that tells how far the reading of its file is, by `PROGRESS`. */
export type GivenTask = ImportTask & { readonly reading: SharedArrayBuffer };

/** Places in the memory that both threads see. */
export const SHARED = { stop: 0, settled: 1, total: 2, places: 3 } as const;

/** What the writing thread says; after `ready` it waits for a word before it writes. */
export type ImportSaid =
  | { readonly kind: "ready" }
  | { readonly kind: "written"; readonly outcome: string }
  | { readonly kind: "stopped" }
  | { readonly kind: "failed"; readonly reason: string };
