import { type FamilyLink, type FamilyRequest, familyLinkState } from "@/lib/domain/family-link";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { TableModel } from "./basic-model";

/** What a coach's lists of a family's links rest on. */
export interface FamilyLinksSource {
  readonly links: readonly FamilyLink[];
  /** Latest first. */
  readonly openings: readonly { readonly linkId: string; readonly openedAt: string }[];
  readonly requests: readonly FamilyRequest[];
  /** Whether a consent to share is in force. */
  readonly consent: "given" | "missing";
  /** ISO instant. */
  readonly now: string;
  readonly dayOf: (instant: string) => string;
  readonly sayAt: (instant: string) => string;
}

function table(
  words: Words,
  caption: string,
  columns: readonly string[],
  rows: readonly { readonly cells: readonly string[]; readonly tone?: "quiet" }[],
): TableModel {
  return {
    caption,
    columns: columns.map((name) => ({ label: words.say(`family-links.${name}`), align: "start" as const })),
    rows: rows.map(({ cells, tone }) => ({ cells, tone: tone ?? "plain" })),
  };
}

/** Every link of a student, latest first: for whom, by whom, until when, how often opened, and whether it opens. */
export function familyLinksTable(words: Words, source: FamilyLinksSource): TableModel | null {
  const { links, openings, consent, now, dayOf, sayAt } = source;
  if (links.length === 0) return null;
  const day = (instant: string): string => sayDay(words, dayOf(instant), "day-year");
  const rows = links.map((link) => {
    const own = openings.filter(({ linkId }) => linkId === link.id);
    const state = familyLinkState(link, now);
    const opens = state === "open" || state === "ending";
    const said =
      opens && consent === "missing"
        ? words.say("family-links.state.no-consent")
        : words.say(`family-links.state.${state}`, {
            renewed: link.renewedAt === null ? "none" : day(link.renewedAt),
            day: link.revokedAt === null ? "" : day(link.revokedAt),
            who: link.revokedBy ?? "",
          });
    return {
      cells: [
        link.label,
        words.say("family-links.by", { day: day(link.madeAt), who: link.who }),
        day(link.expiresAt),
        words.say("family-links.opened", { count: own.length, last: own[0] ? sayAt(own[0].openedAt) : "" }),
        said,
      ],
      ...(opens ? {} : { tone: "quiet" as const }),
    };
  });
  const columns = ["label", "made", "ends", "opened", "state"].map((name) => `column.${name}`);
  const open = rows.filter(({ tone }) => tone === undefined).length;
  return table(words, words.say("family-links.all", { open: consent === "given" ? open : 0 }), columns, rows);
}

/** Every opening of a student's links, latest first. */
export function familyOpeningsTable(words: Words, { links, openings, sayAt }: FamilyLinksSource): TableModel | null {
  if (openings.length === 0) return null;
  const labels = new Map(links.map(({ id, label }) => [id, label]));
  const rows = openings.map(({ linkId, openedAt }) => ({ cells: [sayAt(openedAt), labels.get(linkId) ?? ""] }));
  return table(words, words.say("family-links.openings.caption"), ["openings.when", "column.label"], rows);
}

/** What a family asked for, latest first, with when, by which link, and the answer. */
export function familyRequestsTable(words: Words, { links, requests, dayOf }: FamilyLinksSource): TableModel | null {
  if (requests.length === 0) return null;
  const day = (instant: string): string => sayDay(words, dayOf(instant), "day-year");
  const rows = requests.map(({ kind, askedAt, linkId, settledAt, settledBy, answer }) => ({
    cells: [
      words.say(`family-links.request.${kind}`),
      day(askedAt),
      links.find(({ id }) => id === linkId)?.label ?? words.say("family-links.request.gone"),
      settledAt === null
        ? words.say("family-links.request.open")
        : words.say("family-links.request.answered", {
            ...{ day: day(settledAt), who: settledBy ?? "", answer: answer ?? "" },
          }),
    ],
    ...(settledAt === null ? {} : { tone: "quiet" as const }),
  }));
  const columns = ["asked", "when", "by", "answer"].map((name) => `column.${name}`);
  const open = requests.filter(({ settledAt }) => settledAt === null).length;
  return table(words, words.say("family-links.requests", { open }), columns, rows);
}
