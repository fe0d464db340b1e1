import { askingOf } from "@/lib/domain/asking";
import { daysBetween } from "@/lib/domain/calendar-day";
import { BRIEF_THRESHOLDS } from "@/lib/verdict/brief-thresholds";
import { POLICY } from "@/lib/verdict/policy";
import type { BriefStudent } from "./brief-source";
import { planOnOffer } from "./plan-on-offer";
import { provedAlone, saidGlyph } from "./said";
import type { TrackSummary } from "./track-summary";

/** Why a student's films settle nothing. */
export type WhyBlocked =
  | { readonly kind: "set-aside" | "aided"; readonly films: number }
  | { readonly kind: "reader" | "placement"; readonly summary: TrackSummary }
  | { readonly kind: "few"; readonly films: number; readonly since: string }
  | { readonly kind: "no-plan"; readonly tracks: number };

/** The first day of all tracks; undefined: there is none. */
function firstDay(summaries: readonly TrackSummary[]): string | undefined {
  let first: string | undefined;
  for (const { sessions } of summaries)
    for (const { date } of sessions) if (first === undefined || date < first) first = date;
  return first;
}

/** The sessions of all tracks that are judged: those before a track's beginning settle nothing of it. */
function* judged(summaries: readonly TrackSummary[]): Generator<TrackSummary["sessions"][number]> {
  for (const { sessions, verdict } of summaries)
    for (let at = Math.max(0, sessions.length - verdict.sessions); at < sessions.length; at++)
      yield sessions[at] as TrackSummary["sessions"][number];
}

/** How many of the latest films in a row count for nothing, and why all of them don't. */
function wasted(summaries: readonly TrackSummary[]): WhyBlocked | null {
  let lastUsed = "";
  for (const { date, mark } of judged(summaries)) if (mark === "used" && date > lastUsed) lastUsed = date;
  const later = new Set<string>();
  let kind: "aided" | "set-aside" = "aided";
  for (const { date, mark } of judged(summaries)) {
    if (date <= lastUsed) continue;
    later.add(date);
    if (mark !== "aided") kind = "set-aside";
  }
  return later.size < BRIEF_THRESHOLDS.asideFilms.value ? null : { kind, films: later.size };
}

function usedFilms(summaries: readonly TrackSummary[]): number {
  return Math.max(0, ...summaries.map(({ sessions }) => sessions.filter(({ mark }) => mark === "used").length));
}

/**
 * Why the films of a student settle nothing, the reason that is mended most easily first; null: they may settle something,
 * or it is too early to ask.
 *
 * Set aside or filmed with an aid: the latest films in a row. Not told apart: a track that would be proved, had not its reader
 * or the phone's place changed with it. Too few: no track has had its first look though the first film is long ago. No plan:
 * twelve weeks after the first film nothing is proved or holding, and of the questions that are still asked none has a plan with
 * four chances in five.
 */
export function whyBlocked(entry: BriefStudent, today: string): WhyBlocked | null {
  const { summaries } = entry;
  const first = firstDay(summaries);
  if (first === undefined) return null;
  const lost = wasted(summaries);
  if (lost !== null) return lost;
  const open = summaries.filter(
    (summary) =>
      saidGlyph(summary.verdict) === "open" &&
      provedAlone(summary.verdict) === "no" &&
      askingOf(entry.askings, summary) === null,
  );
  const torn = open.find(({ verdict }) => verdict.notToldApart !== null);
  const from = torn?.verdict.notToldApart?.from;
  if (torn !== undefined && from !== undefined) return { kind: from, summary: torn };
  const films = usedFilms(summaries);
  const days = daysBetween(first, today);
  if (films < POLICY.firstLook)
    return days > BRIEF_THRESHOLDS.fewFilmsAfter.value ? { kind: "few", films, since: first } : null;
  const settled = summaries.some(({ verdict }) => saidGlyph(verdict) !== "open" || provedAlone(verdict) === "alone");
  if (
    days <= BRIEF_THRESHOLDS.noPlanAfter.value ||
    settled ||
    open.length === 0 ||
    open.some(({ verdict }) => planOnOffer(verdict) !== null)
  )
    return null;
  return { kind: "no-plan", tracks: open.length };
}
