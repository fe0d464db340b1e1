import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { ProvedChange } from "@/lib/domain/track-verdict";
import type { Posterior } from "@/lib/stats/look";
import type { Claim, NewLevel } from "./decide-words";
import { trackOn } from "./goal-at";
import type { JudgedSeries } from "./judged-series";
import type { Policy } from "./policy";
import { decideMoved, decideWorth, levelsOf } from "./worth";

/** Share of a change's weight from which on ramps make it gradual. */
const HALF = 0.5;

/**
 * How a change came about, and the first session that surely lies on its new level.
 *
 * A step's new level surely holds from the largest index of its 95 of 100 set on. A gradual change ends nowhere yet:
 * what comes after the look that proved it is taken for new.
 */
export function newLevelOf(found: Posterior, look: number): NewLevel {
  const last = found.set95.at(-1);
  if (found.rampShare > HALF || last === undefined) return { shape: "gradual", surelyFrom: look };
  return { shape: "step", surelyFrom: last };
}

/** Date of the last used session before an index. */
function dateBefore(judged: JudgedSeries, index: number): string {
  let at = index - 1;
  while (at > 0 && !judged.series.groups[at]?.used) at--;
  return (judged.sessions[Math.max(0, at)] as { date: string }).date;
}

/**
 * A proved change as it is told: when, how big, from where to where, and its word.
 *
 * @param found the engine's answer on the stretch that shows it, indices counted from the track's first session
 * @param end last session of that stretch
 */
export function describeChange(
  track: JudgedTrack,
  judged: JudgedSeries,
  claim: Claim,
  found: Posterior,
  end: number,
  policy: Policy,
): ProvedChange {
  const dateAt = (index: number): string => (judged.sessions[index] as { date: string }).date;
  const { shape } = newLevelOf(found, end);
  const first = found.set95[0] ?? found.rampStart10;
  const { before, after } = levelsOf(found);
  const then = trackOn(track, dateAt(claim.provedAt));
  return {
    verdict: decideWorth(then, found, claim.direction, policy),
    shape,
    from: shape === "step" ? dateBefore(judged, first) : dateAt(found.rampStart10),
    to: dateAt(shape === "step" ? (found.set95.at(-1) ?? end) : end),
    set80: shape === "step" ? found.set80 : null,
    set95: shape === "step" ? found.set95 : null,
    size: found.size,
    before,
    after,
    moved: decideMoved(before, after, then.goal),
    provedOn: dateAt(claim.provedAt),
  };
}
