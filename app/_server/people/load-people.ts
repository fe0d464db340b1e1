import { readInvitations } from "@/db/read/invitations";
import { readAddedAt, readPeople } from "@/db/read/people";
import type { TableModel } from "@/lib/report/basic-model";
import type { PeoplePage, PeoplePart } from "@/lib/report/people-model";
import { sayDay } from "@/lib/words/day-words";
import { opensPage } from "../access/find-row";
import { currentInstant, dayIn } from "../clock";
import { configuredOrigins } from "../door/origin";
import type { Viewer } from "../gate";
import { type ChargesInForce, chargesInForce } from "./charges-in-force";
import { isOpen, LINK_DAYS } from "./one-time-link";
import { type HeldLink, linkKey } from "./people-desk";
import { sayRoles } from "./say-roles";
import { takeHeld } from "./shown-once";
import { peoplePart, smallForm } from "./small-form";

/** What the page of people is asked with: a link just made, and what became of a press. */
export interface PeopleWish {
  readonly made?: string;
  readonly done?: string;
}

function sayDate({ words, academy }: Viewer, instant: string): string {
  return sayDay(words, dayIn(academy.zone, new Date(instant)), "day-year");
}

/** A link that was just made, on the page this once; none where it was shown or isn't the viewer's. */
export function madeLinkPart(viewer: Viewer, id: string | undefined): PeoplePart[] {
  const held = id === undefined ? null : takeHeld<HeldLink>(linkKey(viewer, id));
  if (!held) return [];
  const { words } = viewer;
  return [
    peoplePart(words.say("people.link.margin"), {
      heading: words.say(`people.link.${held.kind}`, { name: held.name }),
      paragraphs: [words.say("people.link.text", { days: LINK_DAYS })],
      once: { lines: [`${configuredOrigins()[0] ?? ""}${held.path}`], picture: null },
    }),
  ];
}

function workingTable(viewer: Viewer, { charges }: ChargesInForce): TableModel {
  const { db, words, academy } = viewer;
  const since = readAddedAt(db, academy.id);
  return {
    caption: words.say("people.table"),
    columns: [
      { label: words.say("people.column.name"), align: "start" },
      { label: words.say("people.column.roles"), align: "start" },
      { label: words.say("people.column.since"), align: "start" },
      { label: words.say("people.column.students"), align: "end" },
    ],
    rows: readPeople(db, academy.id)
      .filter((each) => each.endedAt === null)
      .map(({ userId, name, roles }) => ({
        cells: [
          name,
          sayRoles(words, roles),
          sayDate(viewer, since.get(userId) ?? ""),
          roles.includes("coach")
            ? String(new Set(charges.filter((each) => each.coachId === userId).map((each) => each.studentId)).size)
            : words.say("people.no-students"),
        ],
        tone: "plain",
        href: `/people/${encodeURIComponent(userId)}`,
      })),
  };
}

function leftPart(viewer: Viewer): PeoplePart[] {
  const { db, words, academy } = viewer;
  const left = readPeople(db, academy.id).filter((each) => each.endedAt !== null);
  if (left.length === 0) return [];
  const table: TableModel = {
    caption: words.say("people.left", { count: left.length }),
    columns: [
      { label: words.say("people.column.name"), align: "start" },
      { label: words.say("people.column.until"), align: "start" },
    ],
    rows: left.map(({ name, endedAt }) => ({ cells: [name, sayDate(viewer, endedAt ?? "")], tone: "quiet" })),
  };
  return [peoplePart(words.say("people.margin.left"), { table, paragraphs: [words.say("people.left.text")] })];
}

function openLinksPart(viewer: Viewer): PeoplePart[] {
  const { db, words, academy } = viewer;
  const now = currentInstant();
  const open = readInvitations(db, academy.id).filter((each) => isOpen(each, now));
  if (open.length === 0) return [];
  return [
    peoplePart(words.say("people.margin.links"), {
      paragraphs: open.map((each) =>
        words.say(`people.open.${each.kind}`, {
          ...{ name: each.name, who: each.who },
          until: sayDate(viewer, each.expiresAt),
        }),
      ),
      forms: open.map(({ id, name }) => {
        const form = smallForm(words, "people.revoke", [], undefined, [{ name: "id", value: id }]);
        return { act: "revoke", form: { ...form, submit: words.say("people.revoke.of", { name }) } };
      }),
    }),
  ];
}

/** Everybody who works in the academy, what they are, and how many students each has in charge; never which. */
export function loadPeople(viewer: Viewer, { made, done }: PeopleWish): PeoplePage {
  const { words, academy } = viewer;
  const now = chargesInForce(viewer);
  const give = opensPage("/people/charges", viewer.roles);
  return {
    title: words.say("people.title", { academy: academy.name }),
    documentTitle: words.say("document-title", { page: words.say("people.document-title") }),
    lede: words.say("people.lede"),
    back: { href: "/settings", label: words.say("people.back-settings") },
    notice: done !== undefined && words.has(`people.done.${done}`) ? words.say(`people.done.${done}`) : "",
    parts: [
      ...madeLinkPart(viewer, made),
      peoplePart(words.say("people.margin.here"), {
        table: workingTable(viewer, now),
        links: [{ href: "/people/new", label: words.say("people.invite") }],
      }),
      peoplePart(words.say("people.margin.students"), {
        heading: words.say("people.nobodys", { count: now.nobodys.length }),
        paragraphs: [words.say(give ? "people.nobodys.give" : "people.nobodys.ask")],
        links: give ? [{ href: "/people/charges", label: words.say("people.charges") }] : [],
      }),
      ...openLinksPart(viewer),
      ...leftPart(viewer),
    ],
  };
}
