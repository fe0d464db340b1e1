import type { Link } from "./basic-model";

/** What stands beside the form that sets a session aside. */
export interface AsideRest {
  readonly back: Link;
  readonly margin: string;
  /** How the session stands now. */
  readonly heading: string;
  readonly texts: readonly string[];
  readonly links: readonly Link[];
}
