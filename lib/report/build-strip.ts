import { dayNumber } from "@/lib/domain/calendar-day";
import type { Edges } from "@/lib/domain/fundamental";
import type { Strip } from "./chart-model";
import { changeTone, drawnChanges, saidVerdict } from "./said";
import type { TrackSummary } from "./track-summary";

const LOW = 1 / 3;
const HIGH = 2 / 3;
const CLAMP = 0.04;

/**
 * The strip of one track: time from 0 to 1 over the stretch shown, the goal band always between one third and two thirds
 * of the height, so that "in band" lines up across a row. Values beyond the strip stay at its edge.
 */
export function buildStrip(summary: TrackSummary, from: string, to: string, sentence: string): Strip {
  const first = dayNumber(from);
  const span = Math.max(1, dayNumber(to) - first);
  const x = (day: string): number => clamp((dayNumber(day) - first) / span, 0, 1);
  const y = heightOf(summary);
  // A strip draws only what is on the list: it has no room to say more.
  const changes = drawnChanges(summary.verdict).filter((drawn) => drawn.standing === "listed");
  const used = summary.sessions.filter((session) => session.mark === "used");
  const start = used[0]?.date;
  const end = used.at(-1)?.date;
  const level = summary.verdict.levelNow;
  const levels: Strip["levels"][number][] = [];
  if (start && end && level) {
    let since = start;
    for (const { change } of changes) {
      levels.push({ x0: x(since), x1: x(change.from), y: y(change.before.estimate) });
      since = change.to;
    }
    if (changes.length > 0 || saidVerdict(summary.verdict) === "steady")
      levels.push({ x0: x(since), x1: x(end), y: y(level.estimate) });
  }
  return {
    summary: sentence,
    dots: summary.sessions
      .filter((session) => session.date >= from)
      .map((session) => ({ x: x(session.date), y: y(session.mean), mark: session.mark })),
    levels,
    changes: changes.map((drawn) => ({
      x0: x(drawn.change.from),
      x1: x(drawn.change.to),
      y0: y(drawn.change.before.estimate),
      y1: y(drawn.change.after.estimate),
      direction: changeTone(drawn),
    })),
    edges: edgesOf(summary.goal),
    now: level
      ? {
          ...{ low: y(level.low95), y: y(level.estimate), high: y(level.high95) },
          place: summary.verdict.position === "edge" ? "edge" : "settled",
        }
      : null,
  };
}

function edgesOf(goal: Edges): Strip["edges"] {
  if (goal.low !== null && goal.high !== null) return "both";
  if (goal.low !== null) return "low";
  return goal.high === null ? "none" : "high";
}

/** Maps values to the height of a strip; a band of one edge takes its other edge a session's spread away, one without edges its own range. */
function heightOf(summary: TrackSummary): (value: number) => number {
  const { low, high } = summary.goal;
  const means = summary.sessions.map((session) => session.mean);
  const unit = summary.verdict.unitSd ?? 1;
  const bottom = low ?? (high === null ? Math.min(...means, 0) - unit : high - 4 * unit);
  const top = high ?? (low === null ? Math.max(...means, 0) + unit : low + 4 * unit);
  const width = Math.max(top - bottom, 1e-9);
  return (value) => clamp(LOW + ((value - bottom) / width) * (HIGH - LOW), CLAMP, 1 - CLAMP);
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
