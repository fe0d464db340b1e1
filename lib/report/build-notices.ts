import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { sayNumber, withUnit } from "@/lib/words/number-words";
import { fingerprintNotices } from "./build-fingerprint";
import type { FundamentalSource } from "./fundamental-source";

/** What a reader of the page of a fundamental should know of its films: beginnings, the phone, what was set aside or mended. */
export function buildNotices(words: Words, source: FundamentalSource): readonly string[] {
  const { history, verdict } = source;
  const list: string[] = [];
  if (history.begins !== null) list.push(words.say("notice.begins", { day: sayDay(words, history.begins, "full") }));
  list.push(...readBackNotices(words, source), ...fingerprintNotices(words, history), ...(source.groupNotices ?? []));
  const aided = history.sessions.filter((entry) => entry.apart?.kind === "circumstance").length;
  if (aided * 2 >= history.sessions.length && aided > 0)
    list.push(words.say("notice.mostly-aided", { aided, sessions: history.sessions.length }));
  for (const aside of verdict.setAside) {
    const day = history.sessions.find((entry) => entry.index === aside.session)?.session.day;
    if (day) list.push(words.say("notice.misreading", { day: sayDay(words, day, "short"), swing: aside.swing + 1 }));
  }
  for (const change of source.corrections)
    list.push(
      words.say("notice.correction", {
        day: sayDay(words, change.day, "short"),
        swing: change.swing,
        from: change.from,
        to: change.to,
        who: change.who,
        why: change.why,
        at: sayDay(words, change.at.slice(0, 10), "short"),
      }),
    );
  const mended = history.sessions.filter((entry) => entry.takenOut !== 0 && entry.apart === null);
  if (mended.length > 0) {
    const most = Math.max(...mended.map((entry) => Math.abs(entry.takenOut)));
    const said = withUnit(words, sayNumber(words, most, 1), history.fundamental.unit);
    list.push(words.say("notice.taken-out", { sessions: mended.length, most: said }));
  }
  const count = history.sessions.filter(
    (entry) => entry.captureWhy === "unknown" && entry.fingerprint?.kind !== "camera",
  ).length;
  if (count > 0)
    list.push(
      words.say("notice.camera-unknown", {
        sessions: count,
        sd: withUnit(
          words,
          words.say("number.half-only", { half: sayNumber(words, 1.96 * history.fundamental.cameraSdUnknown, 1) }),
          history.fundamental.unit,
        ),
      }),
    );
  const first = history.sessions[0]?.session.day;
  const last = history.sessions.at(-1)?.session.day;
  if (first && last && history.sessions.length > 40)
    list.push(words.say("notice.long-season", { stretch: sayStretch(words, first, last) }));
  return list;
}

/** From how many earlier films it was read back, a sentence for each day of reading. */
function readBackNotices(words: Words, { readBack }: FundamentalSource): readonly string[] {
  const films = new Map<string, Set<string>>();
  for (const { readOn, sessionId } of readBack ?? [])
    films.set(readOn, (films.get(readOn) ?? new Set()).add(sessionId));
  return [...films].map(([day, sessions]) =>
    words.say("read-back.notice", { day: sayDay(words, day, "short"), films: sessions.size }),
  );
}
