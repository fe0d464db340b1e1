import type { Fundamental } from "@/lib/domain/fundamental";
import type { Priority } from "@/lib/verdict/choose-priority";
import { isLessSure } from "@/lib/verdict/is-less-sure";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayLevel, saySureShort } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayFromTo, sayHappenedShort, sayPosition, saySize } from "@/lib/words/say-verdict";
import { isAway } from "./away-days";
import { buildStrip } from "./build-strip";
import { countPlaces } from "./count-places";
import { chooseWork, type RankedTrack, type WorkTrack } from "./order-of-work";
import type { ProvedRow, RosterCell, RosterRow } from "./page-model";
import type { NewProof, RosterSource, RosterStudent } from "./roster-source";
import { changeTone, saidGlyph, saidKey } from "./said";
import { sayWorkNote } from "./say-work";
import type { TrackSummary } from "./track-summary";

/** The address of a track's page. */
export function trackHref(summary: TrackSummary): string {
  return `/students/${summary.studentId}/${summary.fundamentalId}?club=${summary.clubGroup}`;
}

/** A proved change in the brief on top. */
export function provedRow(words: Words, source: RosterSource, proof: NewProof): ProvedRow {
  const { summary, fundamental } = proof;
  const change = summary.verdict.change;
  if (change === null) throw new RangeError(`no proved change on ${summary.verdict.id}`);
  const tone = changeTone({ change, standing: "listed" });
  return {
    glyph: saidGlyph(summary.verdict),
    word: words.say(saidKey(summary.verdict)),
    student: proof.student.alias,
    fundamental: sayFundamental(words, fundamental),
    href: trackHref(summary),
    levels: sayFromTo(words, change, fundamental.unit),
    size: saySize(words, change, fundamental.unit),
    tone: tone === "neither" ? "plain" : tone,
    days: sayHappenedShort(words, change),
    sure: saySureNow(words, summary.verdict),
    position: sayPosition(words, summary.verdict.position, summary.verdict.levelNow, summary.goal, fundamental.unit),
    strip: buildStrip(summary, source.from, source.asOf, stripSentence(words, summary, fundamental)),
  };
}

/** How sure, and whether it was surer when it was proved. */
function saySureNow(words: Words, verdict: TrackSummary["verdict"]): string {
  const sure = saySureShort(words, verdict.evidence.noChange);
  return isLessSure(verdict) ? words.say("sure.less", { sure }) : sure;
}

/** What a strip says to whoever can't see it. */
export function stripSentence(words: Words, summary: TrackSummary, fundamental: Fundamental): string {
  const { verdict } = summary;
  return words.say("strip.sentence", {
    name: sayFundamental(words, fundamental),
    word: words.say(saidKey(verdict)),
    level:
      verdict.levelNow === null ? words.say("position.unknown") : sayLevel(words, verdict.levelNow, fundamental.unit),
    position: sayPosition(words, verdict.position, verdict.levelNow, summary.goal, fundamental.unit),
    sessions: summary.sessions.length,
  });
}

/** One student's row. */
export function rosterRow(
  words: Words,
  source: RosterSource,
  entry: RosterStudent,
  columns: readonly Fundamental[],
): RosterRow {
  const ranked = rank(source, entry);
  const work = workOf(source, entry);
  const age = entry.student.birthYear === null ? null : Number(source.today.slice(0, 4)) - entry.student.birthYear;
  const away = isAway(entry.lastDay ?? undefined, source.today);
  return {
    studentId: entry.student.id,
    href: `/students/${entry.student.id}`,
    alias: entry.student.alias,
    detail: words.say("roster.detail", {
      age: age ?? "",
      hasAge: age === null ? "no" : "yes",
      hand: entry.student.hand,
      club: entry.lastClub ?? entry.student.clubs,
    }),
    inHand: work.inHand === null ? null : inHandCell(words, work.inHand.item),
    workNote: sayWorkNote(words, work),
    cells: columns.map((fundamental): RosterCell | null => {
      const track = ranked.find((kept) => kept.fundamental.id === fundamental.id);
      if (!track) return null;
      return {
        fundamentalId: fundamental.id,
        href: trackHref(track.summary),
        strip: buildStrip(track.summary, source.from, source.asOf, stripSentence(words, track.summary, fundamental)),
        position: shortPosition(words, track),
        glyph: saidGlyph(track.summary.verdict),
        word: words.say(saidKey(track.summary.verdict)),
      };
    }),
    places: sayPlaces(words, entry.summaries),
    contact:
      entry.contact === null ? "" : words.say("count.of", { count: entry.contact.solid, of: entry.contact.balls }),
    lastSession: entry.lastDay === null ? words.say("roster.no-film") : sayDay(words, entry.lastDay, "short"),
    away: away ? words.say("roster.away", { day: sayDay(words, entry.lastDay ?? source.today, "short") }) : "",
  };
}

/** The one in hand, measured or still to be measured. */
function inHandCell(words: Words, { fundamental, summary }: WorkTrack): NonNullable<RosterRow["inHand"]> {
  const name = sayFundamental(words, fundamental);
  if (summary === null)
    return {
      ...{ fundamentalId: fundamental.id, name, glyph: "open" },
      position: words.say("position.unknown"),
      word: words.say("work.state.unmeasured"),
    };
  return {
    ...{ fundamentalId: fundamental.id, name, position: shortPosition(words, { fundamental, summary }) },
    glyph: saidGlyph(summary.verdict),
    word: words.say(saidKey(summary.verdict)),
  };
}

/** What was worked out of the very same things before: of everybody it is asked several times for one page. */
const worked = new WeakMap<
  RosterStudent["summaries"],
  {
    readonly fundamentals: RosterSource["fundamentals"];
    readonly work: RosterStudent["work"];
    readonly priority: Priority<WorkTrack>;
  }
>();

/** What a student works on, by the rule that every page has. */
export function workOf(
  source: Pick<RosterSource, "fundamentals">,
  entry: Pick<RosterStudent, "summaries" | "work">,
): Priority<WorkTrack> {
  const { summaries, work } = entry;
  const { fundamentals } = source;
  const known = worked.get(summaries);
  if (known?.fundamentals === fundamentals && known.work === work) return known.priority;
  const priority = chooseWork(fundamentals, rank(source, entry), work);
  worked.set(summaries, { fundamentals, work, priority });
  return priority;
}

/** A student's tracks in the order of work. */
export function rank(
  source: Pick<RosterSource, "fundamentals">,
  entry: Pick<RosterStudent, "summaries">,
): readonly RankedTrack[] {
  return source.fundamentals.flatMap((fundamental) => {
    const summary = entry.summaries.find((kept) => kept.fundamentalId === fundamental.id);
    return summary ? [{ fundamental, summary }] : [];
  });
}

/** Where it is, with its doubt: said before whether it has changed. */
function shortPosition(words: Words, { summary, fundamental }: RankedTrack): string {
  const { verdict } = summary;
  if (verdict.levelNow === null) return words.say("position.unknown");
  return words.say("position.short", {
    level: sayLevel(words, verdict.levelNow, fundamental.unit),
    position: words.say(verdict.position === null ? "position.none" : `position.${verdict.position}`),
  });
}

/** How many of a row's fundamentals lie where: known from the first film, and said first. */
function sayPlaces(words: Words, summaries: readonly TrackSummary[]): string {
  const counts = countPlaces(summaries);
  const known = counts.outside + counts.edge + counts.inside;
  return words.say(known === 0 ? "roster.places.none" : "roster.places", { ...counts, known });
}
