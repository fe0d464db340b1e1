import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { Interval, TrackVerdict } from "@/lib/domain/track-verdict";
import type { NoiseModel } from "@/lib/stats/noise-model";
import type { PlanAnswer } from "@/lib/verdict/ask-plan";
import type { Plan } from "@/lib/verdict/cheapest-plan";
import type { CurvePoint } from "@/lib/verdict/reach-curve";
import type { ListedLook } from "@/lib/verdict/roster-list";
import type { Provable } from "@/lib/verdict/smallest-provable";
import type { SquarePlan } from "@/lib/verdict/square-plan";

/** Plain data to work on; the worker sees no database. */
export type Task =
  | {
      readonly kind: "judge";
      readonly track: JudgedTrack;
      readonly earlier: JudgedTrack | null;
      /** Models of the track's pool, oldest first. */
      readonly models: readonly NoiseModel[];
    }
  | {
      /** The level that the same track would be judged to have now. */
      readonly kind: "level";
      readonly track: JudgedTrack;
      readonly earlier: JudgedTrack | null;
      readonly models: readonly NoiseModel[];
    }
  | { readonly kind: "square"; readonly judged: Judged; readonly models: readonly NoiseModel[] }
  | { readonly kind: "curve"; readonly judged: Judged; readonly models: readonly NoiseModel[] }
  | { readonly kind: "plan"; readonly judged: Judged; readonly models: readonly NoiseModel[]; readonly plan: Plan }
  | {
      readonly kind: "provable";
      readonly track: JudgedTrack;
      readonly models: readonly NoiseModel[];
      /** Further films in all, and how many of them come before the change. */
      readonly plan: { readonly films: number; readonly before: number };
    }
  | { readonly kind: "learn"; readonly tracks: readonly JudgedTrack[]; readonly name: string };

/** What a judged track comes back as: the track with its starting belief, the verdict, and what the roster's list needs. */
export interface Judged {
  readonly track: JudgedTrack;
  readonly verdict: TrackVerdict;
  readonly listedLooks: readonly ListedLook[];
}

export type TaskResult =
  | { readonly kind: "judge"; readonly judged: Judged }
  | { readonly kind: "level"; readonly level: Interval | null }
  | { readonly kind: "square"; readonly plan: SquarePlan | null }
  | { readonly kind: "curve"; readonly curve: readonly CurvePoint[] | null }
  | { readonly kind: "plan"; readonly answer: PlanAnswer | null }
  | { readonly kind: "provable"; readonly provable: Provable | null }
  | { readonly kind: "learn"; readonly model: NoiseModel };

export type TaskKind = Task["kind"];

/** A task of a kind. */
export type TaskOf<K extends TaskKind> = Extract<Task, { readonly kind: K }>;

/** What a task of a kind comes to. */
export type TaskResultOf<K extends TaskKind> = Extract<TaskResult, { readonly kind: K }>;
