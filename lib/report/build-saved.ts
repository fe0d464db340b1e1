import type { Reading, Session } from "@/lib/domain/session";
import type { Student } from "@/lib/domain/student";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { ownRange } from "@/lib/verdict/own-range";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayLevel, sayLimit, sayNumber, sayRange, withUnit } from "@/lib/words/number-words";
import { sayApart } from "@/lib/words/say-apart";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayHappened, sayPosition, saySize } from "@/lib/words/say-verdict";
import { buildWatch } from "./build-watch";
import { saidGlyph, saidKey } from "./said";
import type { SavedLine, SavedPage } from "./saved-model";
import { VERDICT_STEPS, type VerdictStep, verdictSteps } from "./verdict-steps";

/** One track of the session with what is said of it, with the session and without. */
export interface SavedTrack {
  readonly history: TrackHistory;
  readonly after: TrackVerdict;
  /** Null: the track began with the session. */
  readonly before: TrackVerdict | null;
}

/** What the page after saving rests on. */
export interface SavedSource {
  readonly student: Student;
  readonly session: Session;
  readonly clubName: string;
  /** Those in which the session has a value. */
  readonly tracks: readonly SavedTrack[];
  /** Of the session, and of the student's other sessions of its club group. */
  readonly readings: readonly Reading[];
  readonly earlier: readonly Reading[];
  /** `known`: that the session isn't judged is what was just said, so no line says it; absent: each line does. */
  readonly apart?: "known";
  readonly today: string;
}

/** What a session changed in the verdicts, a line each, and the values that are worth a second look. */
export function buildSavedPage(words: Words, source: SavedSource): SavedPage {
  const { student, session, tracks } = source;
  const lines = tracks
    .map((track) => ({ track, steps: verdictSteps(track.before, track.after) }))
    .filter(({ track, steps }) => steps.length > 0 || toldApart(source, track) !== null)
    .sort((a, b) => rank(a.steps) - rank(b.steps))
    .map(({ track, steps }) => lineOf(words, source, track, steps));
  const same = tracks.filter((track) => !lines.some((line) => line.href === hrefOf(source, track)));
  const home = `/students/${student.id}`;
  return {
    title: words.say("saved.title", { day: sayDay(words, session.day, "with-weekday"), alias: student.alias }),
    documentTitle: words.say("document-title", { page: words.say("saved.document-title") }),
    lede: words.say("saved.lede", {
      readings: source.readings.length,
      swings: new Set(source.readings.map((reading) => reading.swing)).size,
      club: source.clubName,
    }),
    back: { href: home, label: words.say("fundamental-page.back", { alias: student.alias }) },
    changed: {
      margin: words.say("saved.margin.changed"),
      heading: words.say("saved.heading", { changed: lines.length, tracks: tracks.length }),
      lines,
      unchanged: same.length === 0 ? "" : words.say("saved.unchanged", { list: sayUnchanged(words, same) }),
    },
    check: buildCheck(words, source),
    next: {
      margin: words.say("saved.margin.next"),
      heading: words.say("saved.next"),
      links: [
        { href: home, label: words.say("saved.season", { alias: student.alias }) },
        { href: `${home}/sessions/${session.id}`, label: words.say("saved.session") },
        { href: "/record", label: words.say("saved.another") },
      ],
    },
  };
}

function rank(steps: readonly VerdictStep[]): number {
  return steps[0] === undefined ? VERDICT_STEPS.length : VERDICT_STEPS.indexOf(steps[0]);
}

function hrefOf({ student }: SavedSource, { history }: SavedTrack): string {
  return `/students/${student.id}/${history.fundamental.id}?club=${history.clubGroup}`;
}

/** Why the session isn't judged in a track; null: it is. */
function apartOf({ history }: SavedTrack, session: Session) {
  return history.sessions.find((entry) => entry.session.id === session.id)?.apart ?? null;
}

/** The same where a line is to say it. */
function toldApart(source: SavedSource, track: SavedTrack) {
  return source.apart === "known" ? null : apartOf(track, source.session);
}

function lineOf(words: Words, source: SavedSource, track: SavedTrack, steps: readonly VerdictStep[]): SavedLine {
  const apart = toldApart(source, track);
  const said = steps.map((step) => sayStep(words, source, track, step));
  return {
    href: hrefOf(source, track),
    name: sayFundamental(words, track.history.fundamental),
    glyph: saidGlyph(track.after),
    text: [...said, ...(apart === null ? [] : [words.say("saved.apart", { why: sayApart(words, apart) })])].join(" "),
  };
}

function sayStep(words: Words, source: SavedSource, { history, before, after }: SavedTrack, step: VerdictStep): string {
  const { unit } = history.fundamental;
  const place = (verdict: TrackVerdict): string =>
    sayPosition(words, verdict.position, verdict.levelNow, history.goal, unit);
  const change = after.change;
  return words.say(`saved.step.${step}`, {
    word: words.say(saidKey(after)),
    was: before === null ? "" : words.say(saidKey(before)),
    size: change === null ? "" : saySize(words, change, unit),
    happened: change === null ? "" : sayHappened(words, change),
    limit: after.smallestWorthwhile === null ? "" : sayLimit(words, after.smallestWorthwhile, unit),
    level: after.levelNow === null ? "" : sayLevel(words, after.levelNow, unit),
    hasLevel: after.levelNow === null ? "no" : "yes",
    place: place(after),
    before: before === null ? "" : place(before),
    watch: buildWatch(words, { history, verdict: after, today: source.today })?.short ?? words.say("saved.watch-said"),
    day: after.ownedSince === null ? "" : sayDay(words, after.ownedSince, "short"),
  });
}

/** Names by what is said of them, so that one line holds all: “Not settled: Grip, Hinge. Holding: Ball position”. */
function sayUnchanged(words: Words, tracks: readonly SavedTrack[]): string {
  const byWord = new Map<string, string[]>();
  for (const { history, after } of tracks) {
    const word = words.say(saidKey(after));
    byWord.set(word, [...(byWord.get(word) ?? []), sayFundamental(words, history.fundamental)]);
  }
  return [...byWord]
    .map(([word, names]) => words.say("saved.unchanged.group", { word, names: names.join(", ") }))
    .join(" ");
}

/** Values that lie far from all that was read of the student before; null: none. */
function buildCheck(words: Words, source: SavedSource): SavedPage["check"] {
  const { student, session, tracks } = source;
  const items = source.readings.flatMap((reading) => {
    const fundamental = tracks.find((each) => each.history.fundamental.id === reading.fundamentalId)?.history
      .fundamental;
    if (reading.value === null || !fundamental) return [];
    const others = source.earlier.flatMap((each) =>
      each.fundamentalId === reading.fundamentalId && each.value !== null ? [each.value] : [],
    );
    const range = ownRange(others, reading.value);
    if (range.kind !== "outside") return [];
    const { unit } = fundamental;
    return [
      words.say("saved.check.item", {
        swing: reading.swing,
        name: sayFundamental(words, fundamental),
        value: withUnit(words, sayNumber(words, reading.value, 1), unit),
        range: sayRange(words, range.low, range.high, 1, unit),
      }),
    ];
  });
  if (items.length === 0) return null;
  return {
    margin: words.say("saved.margin.check"),
    heading: words.say("saved.check", { values: items.length, alias: student.alias }),
    items,
    explains: words.say("saved.check.explains"),
    link: { href: `/students/${student.id}/sessions/${session.id}`, label: words.say("saved.check.link") },
  };
}
