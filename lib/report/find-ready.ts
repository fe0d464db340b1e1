import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { isAway } from "./away-days";
import type { BriefFinding } from "./brief-finding";
import type { BriefSource, BriefStudent, RunningDrill } from "./brief-source";
import { byStudent } from "./by-student";
import type { RankedTrack } from "./order-of-work";
import { rank, trackHref, workOf } from "./roster-rows";
import { saidVerdict } from "./said";

/** What was worked on: what the coach chose, else that of the drill given last that still runs, else the last listed gain. */
function workedOn(
  tracks: readonly RankedTrack[],
  running: readonly RunningDrill[],
  chosenId: string | null,
): RankedTrack | null {
  const chosen = tracks.find(({ fundamental }) => fundamental.id === chosenId);
  if (chosen) return chosen;
  const drilled = running
    .toSorted((a, b) => b.start.localeCompare(a.start))
    .map((drill) => tracks.find(({ fundamental }) => fundamental.id === drill.fundamentalId))
    .find((track) => track !== undefined);
  if (drilled) return drilled;
  const provedOn = ({ summary }: RankedTrack): string => summary.verdict.change?.provedOn ?? "";
  const gained = tracks.filter(({ summary }) => saidVerdict(summary.verdict) === "gain");
  return gained.toSorted((a, b) => provedOn(b).localeCompare(provedOn(a)))[0] ?? null;
}

function findingOf(
  words: Words,
  source: BriefSource,
  entry: BriefStudent,
  running: readonly RunningDrill[],
): readonly BriefFinding[] {
  const tracks = rank(source, entry);
  const { stop = null, chosenId = null } = entry.work ?? {};
  const done = stop === null ? workedOn(tracks, running, chosenId) : null;
  if (done === null) return [];
  const { verdict } = done.summary;
  const last = done.summary.sessions.findLast(({ mark }) => mark === "used")?.date;
  const holds = verdict.position === "inside" && verdict.watch === null && saidVerdict(verdict) !== "slip";
  if (!holds || last === undefined || isAway(last, source.today)) return [];
  const { rule } = workOf(source, entry);
  if (rule === null || rule.reason === "slipped" || rule.item.fundamental.id === done.fundamental.id) return [];
  const nextId = rule.item.fundamental.id as string;
  if (running.some((drill) => drill.fundamentalId === nextId)) return [];
  const why = verdict.ownedSince === null ? "inside" : "owned";
  const args = {
    alias: entry.student.alias,
    name: sayFundamental(words, done.fundamental),
    next: sayFundamental(words, rule.item.fundamental),
    day: verdict.ownedSince === null ? "" : sayDay(words, verdict.ownedSince, "short"),
    reason: rule.reason,
    why,
  };
  return [
    {
      word: "ready",
      studentId: entry.student.id,
      alias: entry.student.alias,
      key: `ready ${done.summary.verdict.id} ${why} ${nextId}`,
      fundamental: { href: trackHref(done.summary), label: args.name },
      say: () => words.say("brief.ready.item", args),
      next: () => ({
        heading: words.say("brief.next.ready", args),
        text: words.say("brief.next.ready.text", args),
        alters: words.say("brief.next.ready.alters", args),
      }),
    },
  ];
}

/**
 * Students ready to move on: what was worked on is owned, or inside its band with its whole doubt, and the next in the
 * order of work waits without a drill. Nobody whose work is stopped. Owned first, then in the order of the students.
 */
export function findReady(words: Words, source: BriefSource): readonly BriefFinding[] {
  const running = byStudent(source.drills);
  const found = source.students.flatMap((entry) =>
    findingOf(words, source, entry, running.get(entry.student.id) ?? []),
  );
  const isOwned = ({ key }: BriefFinding): boolean => key.includes(" owned ");
  return [...found.filter(isOwned), ...found.filter((finding) => !isOwned(finding))];
}
