import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { OwnedWatch } from "@/lib/domain/track-verdict";
import { ownedSince } from "./owned-since";
import type { Policy } from "./policy";
import { levelAt, provedOnAt, shareAt, type TrackState, wordAt } from "./track-state";
import { watchOwned } from "./watch-owned";

/** What a look says of owning: since when, and whether it is to be looked at again. */
export interface OwnedLooks {
  readonly since: CalendarDay | null;
  readonly watch: OwnedWatch | null;
}

/** The owning rule and the watch over it at every look of a track, in order; the last as it stands under the goal of now. */
export function ownedLooks(state: TrackState, policy: Policy): readonly OwnedLooks[] {
  const { track, judged } = state;
  const owned = ownedSince(
    track,
    judged,
    judged.sessions.map((_, at) => ({
      level: () => levelAt(state, at),
      share: (goal) => shareAt(state, at, goal),
      verdict: () => wordAt(state, at),
      provedOn: () => provedOnAt(state, at),
    })),
    policy,
  );
  const since = owned.looks.map((day, at) => (at === owned.looks.length - 1 ? owned.now : day));
  const watch = watchOwned(state, since, policy);
  return since.map((day, at) => ({ since: day, watch: watch[at] ?? null }));
}
