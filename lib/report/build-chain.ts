import { PHASES } from "@/lib/domain/fundamental";
import { isNamedInOrder } from "@/lib/domain/order-of-work";
import type { Priority } from "@/lib/verdict/choose-priority";
import { workStanding } from "@/lib/verdict/work-standing";
import { type WorkState, workState } from "@/lib/verdict/work-state";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayLevel, sayShare } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayPosition } from "@/lib/words/say-verdict";
import { isAway } from "./away-days";
import { verdictSentence } from "./build-fundamental";
import { buildSeasonChart } from "./build-season-chart";
import { buildStrip } from "./build-strip";
import { buildWatch } from "./build-watch";
import type { Strip } from "./chart-model";
import type { WorkTrack } from "./order-of-work";
import type { Fact, SeasonRow } from "./page-model";
import { stripSentence } from "./roster-rows";
import { provedAlone, saidGlyph, saidKey } from "./said";
import type { ChainEntry, ChainGroup } from "./season-model";
import type { SeasonSource, SeasonTrack } from "./season-source";
import { buildTrackSummary } from "./track-summary";

/**
 * The chain of fundamentals in the trade's order: everything measured, and what the order of work names and nobody measured. Of
 * something else that isn't measured nothing is said, unless it is in hand.
 *
 * @param from first day of the time axis that all charts share
 */
export function buildChain(
  words: Words,
  source: SeasonSource,
  priority: Priority<WorkTrack>,
  from: string,
): readonly ChainGroup[] {
  const inHand = priority.inHand?.item.fundamental.id ?? null;
  return PHASES.map((phase) => ({
    label: words.say(`phase.${phase}`),
    entries: source.fundamentals
      .filter((fundamental) => fundamental.phase === phase)
      .flatMap((fundamental): ChainEntry[] => {
        const track = source.tracks.find(({ history }) => history.fundamental.id === fundamental.id);
        if (track !== undefined) return [measured(words, source, priority, track, from)];
        if (!isNamedInOrder(fundamental) && fundamental.id !== inHand) return [];
        return [
          {
            kind: "unmeasured",
            fundamentalId: fundamental.id,
            name: sayFundamental(words, fundamental),
            stateWord: words.say("work.state.unmeasured"),
            place: fundamental.id === inHand ? "in-hand" : "waits",
            text: words.say("work.measured-by", {
              view: words.say(`view.${fundamental.view}`),
              checkpoint: words.say(`checkpoint.${fundamental.checkpoint}`),
              derived: fundamental.derivedFrom === null ? "no" : "yes",
            }),
          },
        ];
      }),
  })).filter((group) => group.entries.length > 0);
}

function measured(
  words: Words,
  source: SeasonSource,
  priority: Priority<WorkTrack>,
  track: SeasonTrack,
  from: string,
): ChainEntry {
  const { fundamental } = track.history;
  const isInHand = priority.inHand?.item.fundamental.id === fundamental.id;
  const runs = source.drills.some(
    ({ fundamentalId, start, end }) =>
      fundamentalId === fundamental.id && start <= source.today && (end ?? source.today) >= source.today,
  );
  const state = workState(workStanding(track), isInHand || runs ? "yes" : "no");
  const owned = state === "owned" && lastDayIfAway(source, track) !== null;
  return {
    kind: "measured",
    state,
    stateWord: words.say(owned ? "work.state.to-be-checked" : `work.state.${state}`),
    short: sayShort(words, track),
    strip: stripOf(words, source, track, from),
    row: buildRow(words, source, priority, { ...track, state, from }),
  };
}

function stripOf(words: Words, source: SeasonSource, { history, verdict }: SeasonTrack, from: string): Strip {
  const summary = buildTrackSummary(history, verdict);
  return buildStrip(summary, from, source.asOf, stripSentence(words, summary, history.fundamental));
}

/** Where it is, with its doubt: said before whether it has changed. */
function sayShort(words: Words, { history, verdict }: SeasonTrack): string {
  if (verdict.levelNow === null) return words.say("position.unknown");
  return words.say("position.short", {
    level: sayLevel(words, verdict.levelNow, history.fundamental.unit),
    position: words.say(verdict.position === null ? "position.none" : `position.${verdict.position}`),
  });
}

/** The last day of a film that counts, where that is too long ago for "now"; else null. */
function lastDayIfAway({ today }: SeasonSource, { history }: SeasonTrack): string | null {
  const last = history.sessions.filter((entry) => entry.apart === null).at(-1)?.session.day;
  return last !== undefined && isAway(last, today) ? last : null;
}

function placeOf(state: WorkState, isInHand: "yes" | "no"): SeasonRow["place"] {
  if (isInHand === "yes") return "in-hand";
  return state === "keep" || state === "owned" ? "keep" : "waits";
}

function buildRow(
  words: Words,
  source: SeasonSource,
  { inHand }: Priority<WorkTrack>,
  track: SeasonTrack & { readonly state: WorkState; readonly from: string },
): SeasonRow {
  const { history, verdict, state } = track;
  const { fundamental } = history;
  const isInHand = inHand?.item.fundamental.id === fundamental.id;
  const waits = state === "open" && verdict.position === "outside" && inHand !== null && !isInHand;
  return {
    fundamentalId: fundamental.id,
    href: `/students/${source.student.id}/${fundamental.id}?club=${history.clubGroup}`,
    name: sayFundamental(words, fundamental),
    place: placeOf(state, isInHand ? "yes" : "no"),
    glyph: saidGlyph(verdict),
    word: words.say(saidKey(verdict)),
    text: [
      verdictSentence(words, { history, verdict }),
      provedAlone(verdict) === "alone" ? words.say("listing.alone") : "",
      ...standingTexts(words, source, track),
      waits ? words.say("work.waits-for", { name: sayFundamental(words, inHand.item.fundamental) }) : "",
    ]
      .filter((text) => text !== "")
      .join(" "),
    // Events stand once, under the axis that all small charts share.
    chart: buildSeasonChart(words, { history, verdict, drills: [], events: [], asOf: source.asOf, from: track.from }),
    facts: rowFacts(words, source, track),
  };
}

function standingTexts(words: Words, source: SeasonSource, track: SeasonTrack): readonly string[] {
  const { history, verdict } = track;
  const watch = buildWatch(words, { history, verdict, today: source.today });
  const since = verdict.ownedSince;
  const key = lastDayIfAway(source, track) === null ? "owned.sentence" : "work.owned-then";
  return [
    since === null ? "" : words.say(key, { day: sayDay(words, since, "short") }),
    watch === null ? "" : words.say("watch.row", { short: watch.short }),
  ];
}

function rowFacts(words: Words, source: SeasonSource, track: SeasonTrack): readonly Fact[] {
  const { history, verdict } = track;
  const { unit } = history.fundamental;
  const away = lastDayIfAway(source, track);
  const on =
    away === null ? words.say("fact.level-now") : words.say("fact.level-on", { day: sayDay(words, away, "short") });
  const fact = (name: string, value: string): Fact => ({ name, value, note: "" });
  return [
    ...(verdict.levelNow === null ? [] : [fact(on, sayLevel(words, verdict.levelNow, unit))]),
    fact(words.say("fact.band"), sayPosition(words, verdict.position, verdict.levelNow, history.goal, unit)),
    ...(verdict.bandShare === null ? [] : [fact(words.say("fact.share"), sayShare(words, verdict.bandShare))]),
  ];
}
