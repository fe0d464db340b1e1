import { dayFromNumber, dayNumber, daysBetween } from "@/lib/domain/calendar-day";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import type { Plateau } from "@/lib/verdict/plateau";
import { PLATEAU_THRESHOLDS } from "@/lib/verdict/plateau-thresholds";
import { WATCH_THRESHOLDS } from "@/lib/verdict/watch-thresholds";
import type { FamilyFinding } from "@/lib/words/say-family";
import { familyCorrection } from "./family-correction";
import { familyReader, findingOf } from "./family-findings";
import type { StorySource, StoryTrack } from "./family-story-source";
import { type ToldDoubt, toldDoubt } from "./told-doubt";

type Told = FamilyFinding["kind"];

/** What the first sentences tell of one track; of a kind each, so that none is told twice. */
export interface StoryFinding {
  readonly track: StoryTrack;
  readonly finding: FamilyFinding;
  /** `films`, `flat`, `unpractised`: after ten weeks without a change; `away`: it was good when it was last seen. */
  readonly kind: Told | "flat" | "unpractised" | "films" | "away";
  /** With the kinds that rest on it. */
  readonly plateau: Plateau | null;
  /** The last day on which anything that counts was seen; null: on none. */
  readonly last: string | null;
}

/** What changed, as far as it may be told. */
export const CHANGED: readonly StoryFinding["kind"][] = ["better", "worse", "within", "through", "elsewhere"];
/** What is the same, told where nothing changed. */
export const SAME: readonly StoryFinding["kind"][] = ["flat", "unpractised", "same"];
/** What can't be told, in the order in which one of them is. */
export const UNSURE: readonly StoryFinding["kind"][] = ["checking-better", "checking", "films", "away", "open"];
/** What whoever is under nine is told, first things first: no slip, and nothing that asks for a number. */
const YOUNG: readonly StoryFinding["kind"][] = ["better", "good", "checking-better", "away", "open", "films"];

/** Whether a drill for it ran in the weeks after which standing still is spoken of: without one no drill can be to blame. */
function drilled({ history }: StoryTrack, { drills, today }: Pick<StorySource, "drills" | "today">): "yes" | "no" {
  const from = dayFromNumber(dayNumber(today) - 7 * PLATEAU_THRESHOLDS.plateauWeeks.value + 1);
  const ran = drills.some(
    ({ fundamentalId, start, end }) =>
      fundamentalId === history.fundamental.id && start <= today && (end ?? today) >= from,
  );
  return ran ? "yes" : "no";
}

function kindOf(
  finding: FamilyFinding,
  track: StoryTrack,
  source: Pick<StorySource, "drills" | "today">,
  away: boolean,
): StoryFinding["kind"] {
  const { plateau } = track;
  if (finding.kind === "good") return away ? "away" : "good";
  if (finding.kind !== "open" && finding.kind !== "same") return finding.kind;
  if (plateau?.kind === "flat" || plateau?.kind === "unpractised")
    return drilled(track, source) === "yes" ? plateau.kind : finding.kind;
  if (plateau?.kind === "films" && finding.kind === "open") return "films";
  // An early alarm is for the coach alone, and nothing is praised over it.
  const held = plateau?.kind === "held" && finding.kind === "same" && track.verdict.watch === null;
  return held ? "good" : finding.kind;
}

/** What is told of one track. After a long time without a video nothing is called good as of now (SEASON.md 5). */
export function storyFinding(track: StoryTrack, source: Pick<StorySource, "drills" | "today">): StoryFinding {
  const { today } = source;
  const finding = findingOf(track, today);
  const { plateau, history } = track;
  const last = history.sessions.findLast(({ apart }) => apart === null)?.session.day ?? null;
  const away = last !== null && daysBetween(last, today) > WATCH_THRESHOLDS.watchAway.value;
  const kind = kindOf(finding, track, source, away);
  const held = kind === "good" && finding.kind === "same" && plateau !== null;
  return { track, finding: held ? { kind: "good", weeks: plateau.weeks } : finding, kind, plateau, last };
}

/** What is held, the longest first; that of the drill in hand before it. */
export function heldFirst(told: readonly StoryFinding[], { task }: Pick<StorySource, "task">): readonly StoryFinding[] {
  const weeks = ({ finding }: StoryFinding): number => (finding.kind === "good" ? finding.weeks : 0);
  const inHand = ({ track }: StoryFinding): number => (track.history.fundamental.id === task?.fundamentalId ? 0 : 1);
  return told.filter(({ kind }) => kind === "good").sort((a, b) => inHand(a) - inHand(b) || weeks(b) - weeks(a));
}

/** What is taken back of a track (SEASON.md 19). */
export interface StoryCorrection {
  readonly track: StoryTrack;
  readonly correction: Extract<FamilyFinding, { kind: "corrected" }>;
}

/** What was told of a track for sure and is less sure now. */
export interface StoryDoubt {
  readonly track: StoryTrack;
  readonly doubt: ToldDoubt;
}

/** Everything that is told of what is measured: in the order of work, but that of the drill in hand first. */
export interface StoryFindings {
  readonly told: readonly StoryFinding[];
  readonly corrected: readonly StoryCorrection[];
  /** Said instead of that it is being checked. */
  readonly doubted: readonly StoryDoubt[];
}

/**
 * What of a student's tracks a reader is told. Under nine that are the two first of what is good news or open; what was said is
 * taken back whoever reads, but for a slip, of which they weren't told.
 */
export function storyFindings(source: StorySource): StoryFindings {
  const { tracks, student, today, task, openings } = source;
  const before = { openings, told: source.told ?? [] };
  const reader = familyReader(student, today);
  const inHand = (track: StoryTrack): number => (track.history.fundamental.id === task?.fundamentalId ? 0 : 1);
  const ordered = [...tracks].sort((a, b) => inHand(a) - inHand(b));
  const corrected = ordered.flatMap((track) => {
    const { id } = track.history.fundamental;
    const correction = familyCorrection(track.verdict, before, { fundamentalId: id, today });
    return correction === null || (reader === "young" && correction.said !== "better") ? [] : [{ track, correction }];
  });
  const taken = new Set(corrected.map(({ track }) => track));
  const doubted = ordered.flatMap((track) => {
    const { id } = track.history.fundamental;
    const doubt = taken.has(track) ? null : toldDoubt(track.verdict, before, { fundamentalId: id, today });
    return doubt === null || (reader === "young" && doubt.said !== "better") ? [] : [{ track, doubt }];
  });
  const named = new Set(doubted.map(({ track }) => track));
  const all = ordered.filter((track) => !named.has(track)).map((track) => storyFinding(track, source));
  if (reader !== "young") return { told: all, corrected, doubted };
  const most = FAMILY_THRESHOLDS.youngMost.value;
  const room = Math.max(0, most - corrected.length);
  const told = all
    .filter(({ kind, track }) => YOUNG.includes(kind) && !taken.has(track))
    .sort((a, b) => YOUNG.indexOf(a.kind) - YOUNG.indexOf(b.kind))
    .slice(0, Math.max(0, room - doubted.length));
  return { told, corrected: corrected.slice(0, most), doubted: doubted.slice(0, room) };
}
