import { withTableDownloads } from "@/lib/report/table-downloads";
import type { Words } from "@/lib/words/catalogue";

/** Pages whose tables can be taken out, by the name that a download has for them. */
export const PAGES_WITH_TABLES = [
  ...([
    "roster",
    "season",
    "report",
    "fundamental",
    "session",
    "drills",
    "plan",
    "review",
    "drill",
    "practice",
    "events",
    "consent",
    "family-links",
    "known",
    "priority",
    "read-backs",
    "goals",
  ] as const),
  ...([
    "past-imports",
    "past-import",
    "keys",
    "due",
    "compared-drills",
    "drill-seasons",
    "academy",
    "spread",
    "library",
    "library-drill",
    "definitions",
    "definition",
  ] as const),
  ...(["decides", "clubs", "note-codings", "rereads", "reader-error", "keeping", "academy-goals", "owning"] as const),
] as const;

/** See `PAGES_WITH_TABLES`. */
export type PageWithTables = (typeof PAGES_WITH_TABLES)[number];

/** A page's model with a download at each of its tables. */
export function linkTables<T>(
  words: Words,
  of: PageWithTables,
  which: Readonly<Record<string, string | undefined>>,
  model: T,
): T {
  const named = Object.entries(which).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]]));
  return withTableDownloads(model, (place) => ({
    href: `/api/tables?${new URLSearchParams([["of", of], ...named, ["table", String(place)]])}`,
    label: words.say("table.download"),
  }));
}
