import type { DrillAssignment } from "@/lib/domain/student";
import { KEEP_THRESHOLDS } from "@/lib/verdict/keep-thresholds";
import { restingCost } from "@/lib/verdict/resting-cost";
import { rests } from "@/lib/verdict/rests";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayDose } from "@/lib/words/say-dose";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { isAway } from "./away-days";
import { buildRelease } from "./build-release";
import { buildWatch } from "./build-watch";
import type { KeepPart, KeptItem } from "./keep-list-model";
import { sayOwnedAnew, sayRuleOf } from "./say-owned";
import type { SeasonSource, SeasonTrack } from "./season-source";

const STATES = ["watch", "check", "keeps", "rests"] as const;

function lastUsed({ history }: SeasonTrack): string | undefined {
  return history.sessions.filter((entry) => entry.apart === null).at(-1)?.session.day;
}

function stateOf(words: Words, track: SeasonTrack, today: string): KeptItem["state"] {
  if (isAway(lastUsed(track), today)) return "check";
  if (buildWatch(words, { ...track, today }) !== null) return "watch";
  return rests(track.verdict) ? "rests" : "keeps";
}

/** The drill that was given when it was gained: the last one for it that began before it was owned. */
export function drillThen(
  drills: readonly DrillAssignment[],
  fundamentalId: string,
  ownedSince: string,
): DrillAssignment | null {
  const given = drills.filter((drill) => drill.fundamentalId === fundamentalId && drill.start < ownedSince);
  return given.reduce<DrillAssignment | null>(
    (latest, drill) => (latest === null || drill.start >= latest.start ? drill : latest),
    null,
  );
}

/** What helped then, in a short dose, with one link that gives it again; nothing while the work is stopped. */
function doseOf(words: Words, source: SeasonSource, { history, verdict }: SeasonTrack): KeptItem["dose"] {
  if (source.work.stop !== null || verdict.ownedSince === null) return null;
  const { id } = history.fundamental;
  const then = drillThen(source.drills, id, verdict.ownedSince);
  const before = then === null ? "" : sayDose(words, then);
  const page = `/students/${source.student.id}/drills/new`;
  const args = {
    minutes: KEEP_THRESHOLDS.shortMinutes.value,
    days: KEEP_THRESHOLDS.shortDays.value,
    reps: KEEP_THRESHOLDS.shortReps.value,
  };
  if (then === null)
    return {
      text: words.say("keep.dose.no-drill", args),
      action: { href: `${page}?for=${id}`, label: words.say("keep.dose.choose") },
    };
  return {
    text: words.say("keep.dose", {
      ...args,
      drill: then.drill,
      day: sayDay(words, then.start, "short"),
      before,
      hasDose: before === "" ? "no" : "yes",
    }),
    action: {
      href: `${page}?again=${encodeURIComponent(then.id)}`,
      label: words.say("keep.dose.again", { drill: then.drill }),
    },
  };
}

function sayCost(words: Words, source: SeasonSource): string {
  const cost = restingCost(source.sessions.map(({ day }) => day));
  if (cost === null) return words.say("keep.cost.no-rhythm", { every: KEEP_THRESHOLDS.restEvery.value });
  return words.say("keep.cost", { days: cost.everyFilm, resting: cost.resting });
}

function keptItem(words: Words, source: SeasonSource, track: SeasonTrack): KeptItem {
  const { history, verdict } = track;
  const { fundamental } = history;
  const state = stateOf(words, track, source.today);
  const watch = buildWatch(words, { ...track, today: source.today });
  const last = lastUsed(track);
  const anew = sayOwnedAnew(words, history, verdict);
  const meaning: Readonly<Record<KeptItem["state"], readonly string[]>> = {
    watch: watch === null ? [] : [watch.sentence],
    check: [
      ...(watch === null ? [] : [watch.sentence]),
      words.say("keep.check", { day: last === undefined ? "" : sayDay(words, last, "full") }),
    ],
    keeps: [words.say("keep.keeps")],
    rests: [words.say("keep.rests", { every: KEEP_THRESHOLDS.restEvery.value })],
  };
  return {
    fundamentalId: fundamental.id,
    name: sayFundamental(words, fundamental),
    href: `/students/${source.student.id}/${fundamental.id}?club=${history.clubGroup}`,
    state,
    stateWord: words.say(`keep.state.${state}`),
    texts: [
      words.say("owned.sentence", { day: sayDay(words, verdict.ownedSince ?? source.today, "day-year") }),
      ...(anew === "" ? [] : [anew]),
      ...meaning[state],
    ],
    dose: watch === null ? null : doseOf(words, source, track),
  };
}

/**
 * What a student owns, to keep: alarms first, then what is to be checked, what is looked at in turn, what rests; and what was
 * released for the next. Null: nothing is measured.
 */
export function buildKeep(words: Words, source: SeasonSource): KeepPart | null {
  if (source.tracks.length === 0) return null;
  const items = source.tracks
    .filter(({ verdict }) => verdict.ownedSince !== null)
    .map((track) => keptItem(words, source, track))
    .sort((a, b) => STATES.indexOf(a.state) - STATES.indexOf(b.state));
  return {
    margin: words.say("keep.margin"),
    explains: words.say("keep.explains"),
    heading: words.say("keep.heading", {
      count: items.length,
      watch: items.filter(({ state }) => state === "watch").length,
    }),
    rule: sayRuleOf(words, source),
    release: buildRelease(words, source),
    items,
    cost: items.some(({ state }) => state === "rests") ? sayCost(words, source) : "",
  };
}
