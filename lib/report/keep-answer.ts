/** What one field holds in two windows; several ticked boxes are several values, an empty field none. */
export interface Difference {
  readonly name: string;
  readonly here: readonly string[];
  readonly there: readonly string[];
}

/** What the server says to a form that is kept while somebody types. */
export type KeepAnswer =
  | { readonly kind: "kept"; readonly version: number; readonly said: string }
  /** Another window kept it meanwhile: nothing of it was overwritten, and what this one sent is kept beside it. */
  | {
      readonly kind: "changed";
      readonly version: number;
      readonly said: string;
      /** The window whose content waits apart. */
      readonly settles: string;
      readonly differences: readonly Difference[];
    }
  /** The form was saved, so there is nothing to keep any more. */
  | { readonly kind: "saved"; readonly said: string }
  /** Nothing was kept, for the reason that is said. */
  | { readonly kind: "refused"; readonly said: string }
  /** The log-in has ended: nothing was kept of this, and it is tried again. */
  | { readonly kind: "signed-out"; readonly said: string }
  /** To whoever only looked: nothing newer is kept, or something is. */
  | { readonly kind: "newest" | "behind" };
