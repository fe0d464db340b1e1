import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { OwnedWatch } from "@/lib/domain/track-verdict";
import { ownedSince } from "./owned-since";
import type { Policy } from "./policy";
import { levelAt, shareAt, type TrackState, wordAt } from "./track-state";
import { watchOwned } from "./watch-owned";

/** What a look says of owning: since when, and whether it is to be looked at again. */
export interface OwnedLooks {
  readonly since: CalendarDay | null;
  readonly watch: OwnedWatch | null;
}

/** The owning rule and the watch over it at every look of a track, in order. */
export function ownedLooks(state: TrackState, policy: Policy): readonly OwnedLooks[] {
  const { track, judged } = state;
  const since = ownedSince(
    track,
    judged,
    judged.sessions.map((_, at) => ({
      level: () => levelAt(state, at),
      share: () => shareAt(state, at),
      verdict: () => wordAt(state, at),
    })),
    policy,
  );
  const watch = watchOwned(state, since, policy);
  return since.map((day, at) => ({ since: day, watch: watch[at] ?? null }));
}
