import type { DrillPractice } from "@/lib/domain/drill-practice";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { Retention } from "@/lib/verdict/decide-retention";
import type { RetentionFilm } from "@/lib/verdict/retention-films";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayLevel } from "@/lib/words/number-words";
import { sayDrillPractice } from "@/lib/words/say-drill-practice";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayRetention } from "@/lib/words/say-retention";
import { sayPosition } from "@/lib/words/say-verdict";
import type { Fact } from "./basic-model";
import { verdictSentence } from "./build-fundamental";
import type { HappenPart } from "./happen-model";
import { provedAlone, saidKey } from "./said";

/** Solid strikes of counted balls. */
export interface SolidCount {
  readonly solid: number;
  readonly balls: number;
}

/** What happened since a drill began. */
export interface DrillSince {
  readonly given: Pick<AssignmentRecord, "start">;
  readonly fundamental: Fundamental | undefined;
  /** The track of the clubs in hand; null: nothing is measured. */
  readonly track: {
    readonly history: TrackHistory;
    readonly verdict: TrackVerdict;
    /** Of its films since the drill's first day. */
    readonly films: readonly RetentionFilm[];
    /** Null: no gain is proved. */
    readonly retention: Retention | null;
    readonly href: string;
  } | null;
  /** Null: it has not begun. */
  readonly practice: DrillPractice | null;
  /** In the clubs in hand, of the season. */
  readonly contact: { readonly before: SolidCount; readonly since: SolidCount };
  /** Days after the last practice from which a film tells what stays. */
  readonly rest: number;
}

type Add = (key: string, value: string, note?: string) => void;

function addFilms(words: Words, { given, track }: DrillSince, add: Add): void {
  const used = track?.history.sessions.filter(({ apart, index }) => apart === null && index !== null) ?? [];
  const sameDay = track?.films.filter(({ kind }) => kind === "same-day").length ?? 0;
  const before = used.filter(({ session }) => session.day < given.start).length;
  add(
    "drill-since.films",
    words.say("drill-since.films.said", { used: used.length - before, before }),
    sameDay === 0 ? "" : words.say("drill-since.films.same-day", { films: sameDay }),
  );
}

function addLevels(words: Words, { given, track, rest }: DrillSince, add: Add): void {
  if (track === null) return;
  const { history, verdict, retention } = track;
  const { unit } = history.fundamental;
  const { change, levelNow } = verdict;
  if (levelNow === null) return;
  // What was over before the drill began is none of its doing, and what isn't on the roster's list is told as no change.
  const since = change !== null && verdict.listed === true && change.to >= given.start ? change : null;
  add(
    "drill-since.before",
    since === null ? words.say("drill-since.before.open") : sayLevel(words, since.before, unit),
  );
  const position = sayPosition(words, verdict.position, levelNow, history.goal, unit);
  add("drill-since.now", sayLevel(words, levelNow, unit), position);
  add(
    "drill-since.stays",
    retention === null || since === null
      ? words.say("drill-since.stays.no-gain")
      : sayRetention(words, retention, rest),
  );
}

function addPractice(words: Words, { practice }: DrillSince, add: Add): void {
  if (practice === null) return;
  const { lastLogged, stoppedDays, restDays, unnamed, asked } = practice;
  const note = [
    words.say("drill-since.practice.note", {
      logged: lastLogged === null ? "nothing" : "some",
      day: lastLogged === null ? "" : sayDay(words, lastLogged, "short"),
    }),
    ...(asked === null ? [words.say("drill-since.practice.not-asked")] : []),
    ...(stoppedDays === 0 || asked === null ? [] : [words.say("drill-since.practice.stopped", { days: stoppedDays })]),
    ...(restDays === 0 || asked === null ? [] : [words.say("drill-since.practice.rest", { days: restDays })]),
    ...(unnamed === 0 ? [] : [words.say("drill-since.practice.unnamed", { days: unnamed })]),
  ];
  add("drill.fact.practice", sayDrillPractice(words, practice), note.join("; "));
}

function addContact(words: Words, { contact: { before, since } }: DrillSince, add: Add): void {
  if (before.balls + since.balls === 0) return;
  const counts = {
    sinceSolid: since.solid,
    sinceBalls: since.balls,
    beforeSolid: before.solid,
    beforeBalls: before.balls,
  };
  add("drill-since.contact", words.say("drill-since.contact.said", counts), words.say("drill-since.contact.note"));
}

function headingOf(words: Words, { practice, track, fundamental }: DrillSince): string {
  const name = fundamental ? sayFundamental(words, fundamental) : words.say("season.drills.other");
  if (practice === null) return words.say("drill-since.heading.not-begun");
  if (track === null) return words.say("drill-since.heading.none", { name });
  return words.say("drill-since.heading", { word: words.say(saidKey(track.verdict)), name });
}

/** What happened since a drill began: level before and now, the verdict, what stays, practice asked and logged, contact. */
export function buildDrillSince(words: Words, since: DrillSince): HappenPart {
  const { track } = since;
  const facts: Fact[] = [];
  const add: Add = (key, value, note = "") => facts.push({ name: words.say(key), value, note });
  addFilms(words, since, add);
  addLevels(words, since, add);
  addPractice(words, since, add);
  addContact(words, since, add);
  return {
    margin: words.say("drill-since"),
    explains: words.say("drill-since.explains"),
    heading: headingOf(words, since),
    paragraphs:
      track === null
        ? []
        : [
            verdictSentence(words, track),
            ...(provedAlone(track.verdict) === "alone" ? [words.say("listing.alone")] : []),
          ],
    facts: since.practice === null ? [] : facts,
    table: null,
    open: null,
  };
}
