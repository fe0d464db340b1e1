import { dayFromNumber, dayNumber, daysBetween } from "@/lib/domain/calendar-day";
import { BRIEF_THRESHOLDS } from "@/lib/verdict/brief-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayPosition } from "@/lib/words/say-verdict";
import { isAway } from "./away-days";
import type { BriefFinding } from "./brief-finding";
import type { BriefSource, BriefStudent, RunningDrill } from "./brief-source";
import { byStudent } from "./by-student";
import { pausing } from "./pausing";
import { trackHref, workOf } from "./roster-rows";
import { drawnChanges } from "./said";
import { stopped } from "./stopped";
import type { TrackSummary } from "./track-summary";
import { usedDays } from "./used-days";

const STALLED_DAYS = BRIEF_THRESHOLDS.stalledDays.value;

/** The latest day on which a gain was proved that stood on the list; null: none. */
function lastGain(summaries: readonly TrackSummary[]): string | null {
  const days = summaries.flatMap(({ verdict }) =>
    drawnChanges(verdict).flatMap(({ change, standing }) =>
      standing === "listed" && change.verdict === "gain" ? [change.provedOn] : [],
    ),
  );
  return days.toSorted().at(-1) ?? null;
}

interface Work {
  /** Of all the student's club groups. */
  readonly summaries: readonly TrackSummary[];
  readonly running: readonly RunningDrill[];
}

function findingOf(
  words: Words,
  source: BriefSource,
  entry: BriefStudent,
  { summaries, running }: Work,
): (BriefFinding & { readonly since: string }) | null {
  const { inHand } = workOf(source, entry);
  // Inside everywhere there is nothing to gain, on an edge it is measured better first, and a slip is told as one.
  if (inHand?.standing !== "outside" || inHand.item.summary === null) return null;
  const days = usedDays({ summaries });
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || isAway(last, source.today)) return null;
  const from = dayFromNumber(dayNumber(source.today) - STALLED_DAYS);
  const gain = lastGain(summaries);
  const since = gain ?? first;
  const films = days.filter((day) => day > from).length;
  if (since > from || films === 0) return null;
  const { fundamental, summary } = inHand.item;
  const drill = running.find(({ fundamentalId }) => fundamentalId === summary.fundamentalId);
  const args = () => ({
    alias: entry.student.alias,
    films,
    name: sayFundamental(words, fundamental),
    position: sayPosition(words, summary.verdict.position, summary.verdict.levelNow, summary.goal, fundamental.unit),
    gain: gain === null ? "none" : "some",
    day: sayDay(words, since, "short"),
    drilled: drill === undefined ? "no" : "yes",
    drill: drill?.drill ?? "",
    start: drill === undefined ? "" : sayDay(words, drill.start, "short"),
  });
  return {
    word: "stalled",
    studentId: entry.student.id,
    alias: entry.student.alias,
    since,
    // It comes back after as long again.
    key: `stalled ${entry.student.id} ${since} ${Math.floor(daysBetween(since, source.today) / STALLED_DAYS)}`,
    fundamental: { href: trackHref(summary), label: sayFundamental(words, fundamental) },
    say: () => words.say("brief.stalled.item", args()),
    next: () => ({
      heading: words.say("brief.next.stalled", args()),
      text: words.say("brief.next.stalled.text", args()),
      alters: words.say("brief.next.stalled.alters"),
    }),
  };
}

/**
 * Students who were filmed in the last eight weeks, have something outside its band (and no slip to be seen to first), and
 * had no gain that was proved and stood on the roster's list; whoever waits longest first. Neither whoever is away nor
 * whoever pauses or whose work is stopped is among them.
 */
export function findStalled(words: Words, source: BriefSource): readonly BriefFinding[] {
  const running = byStudent(source.drills);
  const summaries = byStudent(source.all);
  const pauses = pausing(source);
  const held = stopped(source);
  return source.students
    .flatMap((entry) => {
      const { id } = entry.student;
      if (pauses.has(id) || held.has(id)) return [];
      const work = { summaries: summaries.get(id) ?? [], running: running.get(id) ?? [] };
      return findingOf(words, source, entry, work) ?? [];
    })
    .toSorted((a, b) => a.since.localeCompare(b.since))
    .map(({ since: _, ...finding }) => finding);
}
