import { type ContactCounts, contactCounts } from "@/lib/verdict/contact-counts";
import { type ContactShare, decideContact } from "@/lib/verdict/contact-share";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayNumber, sayShare, saySure } from "@/lib/words/number-words";
import { sayContactChange, sayContactSpan } from "@/lib/words/say-contact";
import { buildContactChart } from "./build-contact-chart";
import { buildChartFiles } from "./chart-files";
import type { ContactPart, ShareStrip } from "./contact-model";
import type { ContactSource } from "./contact-source";
import type { Fact, TableModel } from "./page-model";

/** Solid strikes beside the fundamentals: the share with its doubt, whether it has changed, and the raw counts. */
export function buildContact(words: Words, source: ContactSource): ContactPart | null {
  if (source.clubGroup === null) return null;
  const counts = contactCounts(source.sessions, source.clubGroup, { from: source.seasonStart, to: source.asOf });
  if (counts.counted.length + counts.apart.length + counts.uncounted === 0) return null;
  const decided = decideContact(counts.counted);
  const share = decided.kind === "ok" ? decided.value : null;
  const table = countTable(words, counts);
  return {
    margin: words.say("contact.margin"),
    explains: words.say("contact.explains"),
    heading: heading(words, share),
    texts: [...texts(words, counts, share), ...sayMentions(words, source.mentions)],
    judged:
      share === null
        ? null
        : {
            glyph: "open",
            word: words.say("verdict.open"),
            facts: facts(words, counts, share),
            strip: buildStrip(words, share),
            chart: buildContactChart(words, source, counts, share),
            files: buildChartFiles(
              words,
              `/api/students/${source.student.id}/contact/svg?club=${source.clubGroup}`,
              "contact",
            ),
          },
    table,
    download:
      table === null
        ? null
        : {
            href: `/api/students/${source.student.id}/contact/csv?club=${source.clubGroup}`,
            label: words.say("contact.download"),
          },
  };
}

/** What notes name, beside the counts: never a number of strikes. */
function sayMentions(words: Words, { notes, kinds }: ContactSource["mentions"]): string[] {
  if (kinds.length === 0) return [];
  const list = kinds.map((each) =>
    words.say("contact.mention", { kind: words.say(`contact.kind.${each.kind}`), notes: each.notes }),
  );
  return [words.say("contact.text.mentions", { notes, list: list.join(", ") })];
}

function heading(words: Words, share: ContactShare | null): string {
  if (share === null) return words.say("contact.heading.none");
  if (share.change === null) return words.say("contact.heading.level", { share: sayShare(words, share.now) });
  return words.say("contact.heading.moved", { change: sayContactChange(words, share.change) });
}

/** Why nothing is called changed, or how far a proof reaches; then what was left out. */
function texts(words: Words, counts: ContactCounts, share: ContactShare | null): string[] {
  const said: string[] = [];
  if (share !== null && share.evidence === null)
    said.push(words.say("contact.text.few", { sessions: counts.counted.length }));
  if (share !== null && share.evidence !== null)
    said.push(
      share.change === null
        ? words.say("contact.text.open", {
            sessions: counts.counted.length,
            sure: saySure(words, share.evidence.noChange),
          })
        : words.say("contact.text.alone", {
            sure: saySure(words, share.evidence.noChange),
            day: sayDay(words, share.change.provedOn, "short"),
          }),
    );
  if (share === null) said.push(words.say("contact.text.none"));
  if (counts.uncounted > 0) said.push(words.say("contact.text.uncounted", { sessions: counts.uncounted }));
  if (counts.apart.length > 0) said.push(words.say("contact.text.apart", { sessions: counts.apart.length }));
  return said;
}

function facts(words: Words, counts: ContactCounts, share: ContactShare): Fact[] {
  const { now, latest, all, overDispersion } = share;
  const balls = Math.max(2, Math.round(all.balls / counts.counted.length));
  const worth = Math.max(1, Math.round(balls / (1 + (balls - 1) * overDispersion)));
  return [
    {
      name: words.say("contact.fact.now"),
      value: sayShare(words, now),
      note: words.say("contact.fact.now-80", {
        range: words.say("number.range", { low: hundred(words, now.low80), high: hundred(words, now.high80) }),
      }),
    },
    {
      name: words.say("contact.fact.latest", { balls: latest.balls }),
      value: words.say("contact.solid", { solid: latest.solid, balls: latest.balls }),
      note: sayContactSpan(words, latest),
    },
    {
      name: words.say("contact.fact.all"),
      value: words.say("contact.solid", { solid: all.solid, balls: all.balls }),
      note: sayContactSpan(words, all),
    },
    {
      name: words.say("contact.fact.alike"),
      value: sayNumber(words, overDispersion, 2),
      note: words.say("contact.fact.alike-note", { balls, worth }),
    },
  ];
}

function buildStrip(words: Words, { now }: ContactShare): ShareStrip {
  const percent = (share: number): number => Math.round(share * 1000) / 10;
  return {
    value: percent(now.estimate),
    low80: percent(now.low80),
    high80: percent(now.high80),
    low95: percent(now.low95),
    high95: percent(now.high95),
    ticks: [0, 50, 100].map((at) => ({ at, label: words.say("contact.percent", { number: String(at) }) })),
    sentence: words.say("contact.strip", {
      share: sayShare(words, now),
      range: words.say("number.range", { low: hundred(words, now.low80), high: hundred(words, now.high80) }),
    }),
  };
}

function hundred(words: Words, share: number): string {
  return sayNumber(words, Math.round(share * 100), 0);
}

function countTable(words: Words, counts: ContactCounts): TableModel | null {
  const rows = [...counts.counted.map((count) => ({ ...count, why: "counted" as const })), ...counts.apart].sort(
    (a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : 0),
  );
  if (rows.length === 0) return null;
  return {
    caption: words.say("contact.table.caption"),
    columns: [
      { label: words.say("contact.table.day"), align: "start" },
      { label: words.say("contact.table.solid"), align: "end" },
      { label: words.say("contact.table.balls"), align: "end" },
      { label: words.say("contact.table.share"), align: "end" },
      { label: words.say("contact.table.enters"), align: "start" },
    ],
    rows: rows.map(({ day, solid, balls, why }) => ({
      cells: [
        sayDay(words, day, "full"),
        String(solid),
        String(balls),
        words.say("contact.percent", { number: sayNumber(words, Math.round((100 * solid) / balls), 0) }),
        words.say(`contact.table.${why}`),
      ],
      tone: why === "counted" ? "plain" : "quiet",
    })),
  };
}
