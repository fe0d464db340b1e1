import { offsetCentimetres } from "@/lib/capture/misplacement";
import type { Fingerprint } from "@/lib/verdict/camera-fingerprint";
import type { HistorySession, TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayNumber, saySigned, withUnit } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";

type FoundSession = HistorySession & { readonly fingerprint: NonNullable<HistorySession["fingerprint"]> };

/** Sessions with a finding, run by run: films in a row with the phone off on one side. Date order in, date order out. */
function runsOf(sessions: readonly HistorySession[]): readonly (readonly FoundSession[])[] {
  const runs = new Map<string, FoundSession[]>();
  for (const entry of sessions) {
    const { fingerprint } = entry;
    if (fingerprint === null || entry.apart?.kind === "before") continue;
    const key = `${fingerprint.view} ${fingerprint.kind} ${fingerprint.run}`;
    runs.set(key, [...(runs.get(key) ?? []), { ...entry, fingerprint }]);
  }
  return [...runs.values()];
}

function sayJumped(words: Words, { jumped }: Fingerprint): string {
  const named = jumped.map(({ fundamental, by }) =>
    words.say("fingerprint.jump", {
      name: sayFundamental(words, fundamental),
      by: withUnit(words, saySigned(words, by, 0), fundamental.unit),
    }),
  );
  return named.reduce((before, next, at) =>
    words.say(at === named.length - 1 ? "fingerprint.and" : "fingerprint.comma", { before, next }),
  );
}

/** Which fundamentals jumped together in a run, and where the phone seems to have stood: as its last film has it. */
function sayRun(words: Words, run: readonly FoundSession[]): string {
  const [first, last] = [run[0] as FoundSession, run.at(-1) as FoundSession];
  const { kind, view, offBy } = last.fingerprint;
  const when = words.say("fingerprint.when", {
    films: run.length,
    first: sayDay(words, first.session.day, "full"),
    last: sayDay(words, last.session.day, "full"),
  });
  const jumped = sayJumped(words, last.fingerprint);
  if (kind === "not-told-apart") return words.say("fingerprint.alike", { when, jumped });
  const stood = words.say(`fingerprint.camera.${view}`, {
    when,
    jumped,
    degrees: sayNumber(words, Math.abs(offBy), 0),
    centimetres: sayNumber(words, Math.abs(offsetCentimetres(offBy)), 0),
    side: offBy > 0 ? "plus" : "minus",
  });
  const placers = new Set(run.map((entry) => entry.placedBy));
  const who = placers.size === 1 ? last.placedBy : null;
  return who === null ? stood : `${stood} ${words.say("fingerprint.placed-by", { who })}`;
}

/** What the fundamentals of one session together say of the phone, and what that did to this track: a notice a run. */
export function fingerprintNotices(words: Words, history: TrackHistory): readonly string[] {
  return runsOf(history.sessions).map((run) => {
    const last = run.at(-1) as FoundSession;
    if (last.fingerprint.kind === "not-told-apart") return sayRun(words, run);
    const aside = run.filter((entry) => entry.fingerprint.done === "set-aside").length;
    const widened = run.filter((entry) => entry.fingerprint.done === "widened");
    const most = Math.max(0, ...widened.map((entry) => entry.captureSd));
    const half = withUnit(words, sayNumber(words, 1.96 * most, 0), history.fundamental.unit);
    const done = [
      ...(widened.length > 0 ? [words.say("fingerprint.done.widened", { films: widened.length, half })] : []),
      ...(aside > 0 ? [words.say("fingerprint.done.set-aside", { films: aside })] : []),
      ...(widened.length + aside === 0 ? [words.say("fingerprint.done.nothing")] : []),
    ];
    return [sayRun(words, run), ...done, words.say(`fingerprint.check.${last.fingerprint.view}`)].join(" ");
  });
}

/** The same for a season: a notice a run, with how many of its fundamentals carry more doubt or are set aside. */
export function seasonFingerprints(words: Words, histories: readonly TrackHistory[]): readonly string[] {
  const bySession = new Map<string, FoundSession>();
  for (const history of histories)
    for (const run of runsOf(history.sessions))
      for (const entry of run) bySession.set(`${entry.fingerprint.view} ${entry.session.id}`, entry);
  const entries = [...bySession.values()].sort((a, b) => (a.session.day < b.session.day ? -1 : 1));
  return runsOf(entries).map((run) => {
    const { kind, view, run: name } = (run.at(-1) as FoundSession).fingerprint;
    if (kind === "not-told-apart") return sayRun(words, run);
    const done = (what: FoundSession["fingerprint"]["done"]): number =>
      histories.filter((history) =>
        history.sessions.some(
          ({ fingerprint }) => fingerprint?.view === view && fingerprint.run === name && fingerprint.done === what,
        ),
      ).length;
    const counts = words.say("fingerprint.season.done", { widened: done("widened"), aside: done("set-aside") });
    return [sayRun(words, run), counts, words.say(`fingerprint.check.${view}`)].join(" ");
  });
}

/** What a finding did to one session, for a table; empty: nothing was found, or the session's own reason says it. */
export function sayFingerprintDone(words: Words, entry: HistorySession): string {
  const { fingerprint } = entry;
  if (fingerprint === null || entry.apart !== null) return "";
  const amount = sayNumber(words, Math.abs(fingerprint.offBy), 0);
  if (fingerprint.kind === "not-told-apart") return words.say("fingerprint.short.alike");
  return words.say(`fingerprint.short.${fingerprint.done}`, { amount });
}

/** What a season's table of sessions says of the phone of one of them; empty: nothing. */
export function saySessionPhone(
  words: Words,
  histories: readonly TrackHistory[],
  sessionId: string,
): readonly string[] {
  const found = new Map(
    histories.flatMap(({ sessions }) =>
      sessions
        .filter((entry) => entry.session.id === sessionId && entry.fingerprint?.kind === "camera")
        .map((entry) => [entry.fingerprint?.view, entry.fingerprint?.offBy ?? 0] as const),
    ),
  );
  return [...found].map(([view, offBy]) =>
    words.say("fingerprint.short.session", {
      amount: sayNumber(words, Math.abs(offBy), 0),
      view: words.say(`view.${view}`),
    }),
  );
}
