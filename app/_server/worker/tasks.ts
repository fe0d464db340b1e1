import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { NoiseModel } from "@/lib/stats/noise-model";
import type { ListedLook } from "@/lib/verdict/roster-list";
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
  | { readonly kind: "square"; readonly judged: Judged; readonly models: readonly NoiseModel[] }
  | { readonly kind: "learn"; readonly tracks: readonly JudgedTrack[]; readonly name: string };

/** What a judged track comes back as: the track with its starting belief, the verdict, and what the roster's list needs. */
export interface Judged {
  readonly track: JudgedTrack;
  readonly verdict: TrackVerdict;
  readonly listedLooks: readonly ListedLook[];
}

export type TaskResult =
  | { readonly kind: "judge"; readonly judged: Judged }
  | { readonly kind: "square"; readonly plan: SquarePlan | null }
  | { readonly kind: "learn"; readonly model: NoiseModel };
