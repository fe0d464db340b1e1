import { type CalendarDay, daysBetween } from "@/lib/domain/calendar-day";
import type { Priority, Work } from "./choose-priority";
import { KEEP_THRESHOLDS } from "./keep-thresholds";
import type { WorkItem } from "./work-standing";

/** What became owned lately and was worked on, and what comes next by the order of work. */
export interface Release<Item> {
  readonly released: readonly { readonly fundamentalId: string; readonly since: CalendarDay }[];
  /** Null: nothing waits. */
  readonly next: Work<Item> | null;
}

/** A measured fundamental, and since when it is owned; null: it isn’t. */
export interface OwnedTrack {
  readonly fundamentalId: string;
  readonly ownedSince: CalendarDay | null;
}

/** What tells that something was worked on. */
export interface ReleaseFacts {
  /** Every drill that was given, with the fundamental that it is for. */
  readonly drills: readonly { readonly fundamentalId: string; readonly start: CalendarDay }[];
  /** What the coach ever put in hand, with the day of the choice. */
  readonly chosen: readonly { readonly fundamentalId: string; readonly day: CalendarDay }[];
  /** Days on which a goal band began: owned since then alone, nothing was gained. */
  readonly bandDays: ReadonlyMap<string, CalendarDay>;
  readonly asOf: CalendarDay;
}

/**
 * What the owning rule has released: owned within the last six weeks, and worked on before, by a drill or by the coach’s choice.
 * The next one is what the order of work puts in hand; it is told until a drill is given for it. Nobody has to confirm it.
 *
 * @param tracks what is measured, in the order of work
 * @param priority the answer of `choosePriority` on them
 * @returns null: nothing was released, what comes next was begun, or the work is stopped
 */
export function releases<Item extends WorkItem>(
  tracks: readonly OwnedTrack[],
  priority: Pick<Priority<Item>, "stop" | "inHand" | "rule">,
  { drills, chosen, bandDays, asOf }: ReleaseFacts,
): Release<Item> | null {
  if (priority.stop !== null) return null;
  const released = tracks.flatMap(({ fundamentalId: id, ownedSince: since }) => {
    if (since === null || daysBetween(since, asOf) > KEEP_THRESHOLDS.releaseDays.value) return [];
    if (bandDays.get(id) === since) return [];
    const isWorkedOn =
      chosen.some(({ fundamentalId, day }) => fundamentalId === id && day < since) ||
      drills.some(({ fundamentalId, start }) => fundamentalId === id && start < since);
    return isWorkedOn ? [{ fundamentalId: id, since }] : [];
  });
  if (released.length === 0) return null;
  const own = released.some(({ fundamentalId }) => fundamentalId === priority.inHand?.item.fundamental.id);
  // What the coach put in hand is done: the order of work has the word again.
  const next = own ? priority.rule : priority.inHand;
  const begun = released.every(({ since }) =>
    drills.some(({ fundamentalId, start }) => fundamentalId === next?.item.fundamental.id && start >= since),
  );
  return next !== null && begun ? null : { released, next };
}
