import { type ClubGroup, clubKindOf } from "@/lib/domain/club-group";
import { type ClubGrouping, currentGroups, type GroupOfClubs } from "@/lib/domain/club-grouping";
import type { RecordedRegrouping } from "@/lib/domain/regroup-clubs";
import { tellCount } from "@/lib/domain/small-group";
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
  /** Of each group the sessions and students of the viewer's reach, and those of others. */
  readonly use: readonly {
    readonly clubGroup: ClubGroup;
    readonly sessions: number;
    readonly students: number;
    readonly otherSessions: number;
    readonly otherStudents: number;
  }[];
  /** Whether the viewer may see every student: how many sessions a change moved is told to them alone. */
  readonly sees: "everybody" | "some";
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

/** A number over students, with the word that some of few others are left out of it. */
function sayCount(words: Words, use: ClubsSource["use"][number] | undefined, of: "sessions" | "students"): string {
  if (!use) return "0";
  const others = of === "sessions" ? use.otherSessions : use.otherStudents;
  const { told, few } = tellCount(use[of], others, use.otherStudents);
  return few === "none" ? String(told) : words.say(`small-group.${of}`, { told });
}

/** The page of the club groups. */
export function buildClubsPage(words: Words, source: ClubsSource): ClubsPage {
  const { grouping, use, changes, kind } = source;
  const groups = currentGroups(grouping);
  const told = use.map((each) => tellCount(each.sessions, each.otherSessions, each.otherStudents));
  const sessions = told.reduce((sum, each) => sum + each.told, 0);
  const inUse = use.length > 0;
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
              sayCount(words, own, "sessions"),
              sayCount(words, own, "students"),
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
    history: changes.length === 0 ? null : history(words, source),
  };
}

function history(words: Words, { changes, sees }: ClubsSource): ClubsPage["history"] {
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
            sees === "everybody" ? String(change.sessions) : words.say("small-group.not-told"),
            change.who,
            change.why,
          ],
          tone: "plain" as const,
        }))
        .reverse(),
    },
  };
}
