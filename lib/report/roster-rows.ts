import type { Fundamental } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayLevel, saySureShort } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayFromTo, sayHappenedShort, sayPosition, saySize } from "@/lib/words/say-verdict";
import { isAway } from "./away-days";
import { buildStrip } from "./build-strip";
import { chooseInHand, type RankedTrack } from "./order-of-work";
import type { ProvedRow, RosterCell, RosterRow } from "./page-model";
import type { NewProof, RosterSource, RosterStudent } from "./roster-source";
import { changeTone, saidGlyph, saidKey } from "./said";
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
    sure: saySureShort(words, summary.verdict.evidence.noChange),
    position: sayPosition(words, summary.verdict.position, summary.verdict.levelNow, summary.goal, fundamental.unit),
    strip: buildStrip(summary, source.from, source.asOf, stripSentence(words, summary, fundamental)),
  };
}

function stripSentence(words: Words, summary: TrackSummary, fundamental: Fundamental): string {
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
  const inHand = chooseInHand(ranked);
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
    inHand:
      inHand === null
        ? null
        : {
            fundamentalId: inHand.track.fundamental.id,
            name: sayFundamental(words, inHand.track.fundamental),
            position: shortPosition(words, inHand.track),
            glyph: saidGlyph(inHand.track.summary.verdict),
            word: words.say(saidKey(inHand.track.summary.verdict)),
          },
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
    contact:
      entry.contact === null ? "" : words.say("count.of", { count: entry.contact.solid, of: entry.contact.balls }),
    lastSession: entry.lastDay === null ? words.say("roster.no-film") : sayDay(words, entry.lastDay, "short"),
    away: away ? words.say("roster.away", { day: sayDay(words, entry.lastDay ?? source.today, "short") }) : "",
  };
}

/** A student's tracks in the order of work. */
export function rank(source: RosterSource, entry: RosterStudent): readonly RankedTrack[] {
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
