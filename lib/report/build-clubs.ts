import { type ClubGroup, clubKindOf } from "@/lib/domain/club-group";
import { type ClubGrouping, currentGroups, type GroupOfClubs } from "@/lib/domain/club-grouping";
import type { RecordedRegrouping } from "@/lib/domain/regroup-clubs";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayClubGroup, sayClubs, sayGroupOfClubs } from "@/lib/words/say-club";
import type { Link, TableModel } from "./basic-model";

/** The page of an academy's club groups: which there are, what can be changed, what was changed. */
export interface ClubsPage {
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly groups: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly table: TableModel;
    /** What can be done with the group of each row. */
    readonly changeLabel: string;
    readonly changes: readonly (readonly Link[])[];
    /** What can be done with all of them. */
    readonly links: readonly Link[];
    /** Why nothing can be changed; empty: it can. */
    readonly fixed: string;
  };
  readonly history: { readonly margin: string; readonly heading: string; readonly table: TableModel } | null;
}

/** What the page of the club groups rests on. */
export interface ClubsSource {
  readonly grouping: ClubGrouping;
  readonly use: readonly { readonly clubGroup: ClubGroup; readonly sessions: number; readonly students: number }[];
  /** Oldest first. */
  readonly changes: readonly RecordedRegrouping[];
  readonly kind: "demo" | "own";
}

const PATH = "/settings/clubs/change";

function changeLinks(words: Words, group: GroupOfClubs, inUse: boolean): readonly Link[] {
  const link = (change: string): Link => ({
    href: `${PATH}?change=${change}&group=${group.id}`,
    label: words.say(`clubs-page.${change}`, { name: sayGroupOfClubs(words, group) }),
  });
  return [...(inUse && group.clubs.length > 1 ? [link("split")] : []), link("rename")];
}

/** The page of the club groups. */
export function buildClubsPage(words: Words, { grouping, use, changes, kind }: ClubsSource): ClubsPage {
  const groups = currentGroups(grouping);
  const sessions = use.reduce((sum, each) => sum + each.sessions, 0);
  const inUse = sessions > 0;
  const column = (name: string, align: "start" | "end" = "start") => ({
    label: words.say(`clubs-page.column.${name}`),
    align,
  });
  const all: Link = inUse
    ? { href: `${PATH}?change=merge`, label: words.say("clubs-page.merge") }
    : { href: `${PATH}?change=arrange`, label: words.say("clubs-page.arrange") };
  return {
    title: words.say("clubs-page.title"),
    lede: words.say(inUse ? "clubs-page.lede.in-use" : "clubs-page.lede"),
    back: { href: "/settings", label: words.say("clubs-page.back") },
    groups: {
      margin: words.say("clubs-page.margin.groups"),
      explains: words.say("clubs-page.explains"),
      heading: words.say("clubs-page.heading", { groups: groups.length, sessions }),
      table: {
        caption: words.say("clubs-page.caption"),
        columns: [
          column("group"),
          column("clubs"),
          column("goals"),
          column("sessions", "end"),
          column("students", "end"),
        ],
        rows: groups.map((group) => {
          const own = use.find((each) => each.clubGroup === group.id);
          return {
            cells: [
              sayGroupOfClubs(words, group),
              sayClubs(words, group.clubs),
              words.say(`club.${clubKindOf(group.id)}`),
              String(own?.sessions ?? 0),
              String(own?.students ?? 0),
            ],
            tone: "plain" as const,
          };
        }),
      },
      changeLabel: words.say("clubs-page.column.change"),
      changes: kind === "demo" ? [] : groups.map((group) => changeLinks(words, group, inUse)),
      links: kind === "demo" ? [] : [all],
      fixed: kind === "demo" ? words.say("clubs-page.demo") : "",
    },
    history: changes.length === 0 ? null : history(words, changes),
  };
}

function history(words: Words, changes: readonly RecordedRegrouping[]): ClubsPage["history"] {
  const before = (at: number): ClubGrouping => changes[at - 1]?.grouping ?? [];
  const names = (grouping: ClubGrouping, ids: readonly ClubGroup[]): string =>
    ids.map((id) => sayClubGroup(words, grouping, id)).join(", ");
  return {
    margin: words.say("clubs-page.margin.history"),
    heading: words.say("clubs-page.history.heading", { changes: changes.length }),
    table: {
      caption: words.say("clubs-page.history.caption"),
      columns: ["day", "what", "sessions", "who", "why"].map((name) => ({
        label: words.say(`clubs-page.history.${name}`),
        align: name === "sessions" ? ("end" as const) : ("start" as const),
      })),
      rows: changes
        .map((change, at) => ({
          cells: [
            sayDay(words, change.day, "full"),
            words.say(`clubs-page.history.${change.kind}`, {
              from: names(before(at), change.from),
              to: names(change.grouping, change.to),
            }),
            String(change.sessions),
            change.who,
            change.why,
          ],
          tone: "plain" as const,
        }))
        .reverse(),
    },
  };
}
