import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { StudentEvent } from "@/lib/domain/student";
import type { Direction, ProvedChange } from "@/lib/domain/track-verdict";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import type { SlipForm } from "@/lib/words/say-family-story";
import type { StorySource, StoryTrack } from "./family-story-source";
import { drawnChanges } from "./said";

/** What a family is told of a change away from the goal, beside which way it goes. */
export interface StorySlip {
  readonly direction: Direction;
  readonly form: SlipForm;
  /** What happened shortly before; it is told as what can be, never as the cause. */
  readonly why: "growth" | "clubs" | "pause" | "none";
  /** A day of the month in which a drill that is on file went with a gain from that same side; null: none did. */
  readonly helpedOn: string | null;
}

/** An injury is told as a pause: of what hurts a message says nothing. */
const WHY: Partial<Readonly<Record<StudentEvent["kind"], StorySlip["why"]>>> = {
  growth: "growth",
  "new-club": "clubs",
  break: "pause",
  injury: "pause",
  pause: "pause",
};

function directionOf({ before, after }: ProvedChange): Direction {
  return after.estimate > before.estimate ? "up" : "down";
}

/** Whether a level lies beyond the goal's edge on that side. */
function beyond(level: number, { goal }: StoryTrack["history"], side: Direction): boolean {
  return side === "up" ? goal.high !== null && level > goal.high : goal.low !== null && level < goal.low;
}

/**
 * “Have started to point right” is said of feet that now do, and that didn't point too far right before; else what is now is
 * compared with what was, which is true from wherever it comes.
 */
function formOf(track: StoryTrack, change: ProvedChange, gain: ProvedChange | null): SlipForm {
  const direction = directionOf(change);
  const pointsThere = direction === "up" ? change.after.estimate > 0 : change.after.estimate < 0;
  if (beyond(change.before.estimate, track.history, direction) || !pointsThere) return "more";
  return gain === null ? "started" : "again";
}

/** The latest gain on the roster's list that led away from the side to which this change leads back; null: there was none. */
function gainBefore({ verdict, history }: StoryTrack, change: ProvedChange): ProvedChange | null {
  const direction = directionOf(change);
  const earlier = drawnChanges(verdict).filter(
    ({ change: each, standing }) =>
      standing === "listed" &&
      each.verdict === "gain" &&
      each.to < change.from &&
      directionOf(each) !== direction &&
      beyond(each.before.estimate, history, direction),
  );
  return earlier.at(-1)?.change ?? null;
}

function whyOf(events: readonly StudentEvent[], { to }: ProvedChange): StorySlip["why"] {
  const from = dayFromNumber(dayNumber(to) - 7 * FAMILY_THRESHOLDS.eventWeeks.value);
  const near = events.findLast(
    ({ kind, day, endDay }) => WHY[kind] !== undefined && day <= to && (endDay ?? day) >= from,
  );
  return (near && WHY[near.kind]) ?? "none";
}

/** What a family is told of a proved change away from the goal. */
export function storySlip(
  track: StoryTrack,
  change: ProvedChange,
  { drills, events }: Pick<StorySource, "drills" | "events">,
): StorySlip {
  const gain = gainBefore(track, change);
  const helped =
    gain !== null &&
    drills.some(
      ({ fundamentalId, start, end }) =>
        fundamentalId === track.history.fundamental.id &&
        start <= gain.to &&
        start < change.from &&
        (end ?? gain.to) >= gain.from,
    );
  return {
    direction: directionOf(change),
    form: formOf(track, change, gain),
    why: whyOf(events, change),
    helpedOn: helped && gain !== null ? gain.to : null,
  };
}
