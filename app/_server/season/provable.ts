import { readNoiseModels } from "@/db/read/noise-models";
import { asksProvable } from "@/lib/report/build-first-week";
import type { FirstProvable } from "@/lib/report/season-source";
import { POLICY } from "@/lib/verdict/policy";
import type { TrackHistory } from "@/lib/verdict/track-history";
import { answerOnce } from "../analysis/kept-answers";
import { enginesModels } from "../analysis/refit-noise";
import type { StudentViewer } from "../gate";
import type { Judged } from "../worker/tasks";

/**
 * What further films could prove of each track, as many as the longest plan has: with one film so far if a second comes before
 * the change, and of the first that this can be said of also straight after the one.
 *
 * @param days different days of film so far
 * @returns undefined where nothing of it is asked
 */
export async function loadProvable(
  viewer: StudentViewer,
  tracks: readonly { readonly history: TrackHistory; readonly judged: Judged }[],
  days: number,
): Promise<ReadonlyMap<string, FirstProvable> | undefined> {
  const asks = asksProvable(days);
  if (asks === "no") return undefined;
  const films = Math.round(POLICY.settleSessions);
  const found = new Map<string, FirstProvable>();
  let isCompared: "yes" | "no" = "no";
  for (const { history, judged } of tracks) {
    const models = enginesModels(readNoiseModels(viewer.db, viewer.scope, history.judged.pool));
    const of = async (before: number) =>
      (await answerOnce({ kind: "provable", track: judged.track, models, plan: { films, before } })).provable;
    const after = await of(asks === "first" ? 1 : 0);
    const compares = asks === "first" && isCompared === "no" && after?.size != null;
    found.set(history.fundamental.id, { after, straight: compares ? await of(0) : null });
    if (compares) isCompared = "yes";
  }
  return found;
}
