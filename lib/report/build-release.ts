import { type Release, releases } from "@/lib/verdict/release-next";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { seasonWork } from "./build-season-next";
import type { KeepPart } from "./keep-list-model";
import type { WorkTrack } from "./order-of-work";
import type { SeasonSource } from "./season-source";

/** What was released, with the day since which it is owned: said once where it is one day, else with each name. */
function headingOf(words: Words, { tracks }: SeasonSource, released: Release<WorkTrack>["released"]): string {
  const named = released.flatMap(({ fundamentalId, since }) => {
    const track = tracks.find(({ history }) => history.fundamental.id === fundamentalId);
    return track
      ? [{ name: sayFundamental(words, track.history.fundamental), day: sayDay(words, since, "short") }]
      : [];
  });
  const days = new Set(named.map(({ day }) => day));
  if (days.size > 1)
    return words.say("keep.release.heading.days", {
      names: named.map((each) => words.say("keep.release.name", each)).join(", "),
    });
  return words.say("keep.release.heading", {
    names: named.map(({ name }) => name).join(", "),
    count: named.length,
    day: [...days].join(""),
  });
}

/** What became owned lately, that it is released, and what comes next with its reason; null: no such thing. */
export function buildRelease(words: Words, source: SeasonSource): KeepPart["release"] {
  const priority = seasonWork(source);
  const tracks = source.tracks.map(({ history, verdict }) => ({
    fundamentalId: history.fundamental.id as string,
    ownedSince: verdict.ownedSince,
  }));
  const found = releases(tracks, priority, {
    drills: source.drills,
    chosen: (source.choices ?? (source.choice === null ? [] : [source.choice])).flatMap(({ fundamentalId, day }) =>
      fundamentalId === null ? [] : [{ fundamentalId, day }],
    ),
    bandDays: new Map(
      source.tracks.flatMap(({ history }) => {
        const began = history.judged.goals?.at(-1)?.from;
        return began === undefined ? [] : [[history.fundamental.id as string, began] as const];
      }),
    ),
    asOf: source.today,
  });
  if (found === null) return null;
  const heading = headingOf(words, source, found.released);
  const { next } = found;
  if (next === null) return { heading, text: words.say("keep.release.nothing"), action: null };
  const name = sayFundamental(words, next.item.fundamental);
  const page = `/students/${source.student.id}`;
  const isCoached = next.standing === "outside" || next.standing === "slipped";
  return {
    heading,
    text: words.say("keep.release.next", {
      name,
      why: words.say(`work.next.${next.reason}.text`, { name, standing: next.standing }),
    }),
    action: isCoached
      ? { href: `${page}/drills/new?for=${next.item.fundamental.id}`, label: words.say("keep.release.drill", { name }) }
      : { href: `${page}/sessions/new`, label: words.say("season.add-session") },
  };
}
