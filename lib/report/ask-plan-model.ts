import type { Fact } from "./basic-model";

/** What films that somebody asks about would tell, finished. */
export interface PlanSaid {
  /** The plan in words. */
  readonly plan: string;
  readonly facts: readonly Fact[];
  /** Whether that is enough to be asked for. */
  readonly enough: string;
  /** What plans these very films; null: their chance is too small, or a button beside offers them. */
  readonly takes: {
    readonly label: string;
    readonly explains: string;
    readonly hidden: readonly { readonly name: string; readonly value: string }[];
  } | null;
}

/** One thing that can be asked for more or less of. */
export interface PlanChoice {
  readonly name: "films" | "swings" | "care";
  readonly label: string;
  /** Fewest or loosest first. */
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** Position of the one asked about. */
  readonly at: number;
}

/** The question what other films would tell. */
export interface AskPlanPart {
  readonly heading: string;
  readonly explains: string;
  /** What the question is about, beside the choices. */
  readonly hidden: readonly { readonly name: string; readonly value: string }[];
  readonly choices: readonly PlanChoice[];
  readonly submit: string;
  readonly said: PlanSaid;
  /** Said when no answer came. */
  readonly failed: string;
}
