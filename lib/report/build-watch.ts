import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { type SaidWatch, sayWatch } from "@/lib/words/say-watch";
import { isAway } from "./away-days";
import { saidVerdict } from "./said";

/** The alarm that a page says, as of the track's last film; null: none, or a slip that is said already. */
export function buildWatch(
  words: Words,
  source: { readonly history: TrackHistory; readonly verdict: TrackVerdict; readonly today: string },
): SaidWatch | null {
  const { history, verdict, today } = source;
  if (verdict.watch === null || saidVerdict(verdict) === "slip") return null;
  const last = history.sessions.filter((entry) => entry.apart === null).at(-1)?.session.day;
  return sayWatch(words, verdict.watch, history.fundamental.unit, last && isAway(last, today) ? last : null);
}
