import type { FormModel } from "./form-model";

/** A button that sends what travels unseen. */
export interface FamilyPress {
  readonly label: string;
  readonly action: string;
  readonly hidden: FormModel["hidden"];
}
