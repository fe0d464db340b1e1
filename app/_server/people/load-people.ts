import { readInvitations } from "@/db/read/invitations";
import { readAddedAt, readPeople } from "@/db/read/people";
import { isVisible } from "@/db/read/visible";
import { tellCount } from "@/lib/domain/small-group";
import type { TableModel } from "@/lib/report/basic-model";
import type { PeoplePage, PeoplePart } from "@/lib/report/people-model";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { opensPage } from "../access/find-row";
import { dayIn } from "../clock";
import type { Viewer } from "../gate";
import { latestInstant } from "../keeping/watch-clock";
import { type ChargesInForce, chargesInForce } from "./charges-in-force";
import { linkAddress, mailOffer } from "./mail-link";
import { isOpen, LINK_DAYS } from "./one-time-link";
import { type HeldLink, linkKey, mailKey } from "./people-desk";
import { sayRoles } from "./say-roles";
import { holdOnce, takeHeld } from "./shown-once";
import { peoplePart, smallForm } from "./small-form";

/** What the page of people is asked with: a link just made, and what became of a press. */
export interface PeopleWish {
  readonly made?: string;
  readonly done?: string;
  /** Why a link was not sent by mail. */
  readonly mail?: string;
}

function sayDate({ words, academy }: Viewer, instant: string): string {
  return sayDay(words, dayIn(academy.zone, new Date(instant)), "day-year");
}

/** Where a link just made is shown: its number, why it was not sent, and whom the page is about besides. */
export interface MadeWish {
  readonly made?: string;
  readonly mail?: string;
  readonly about?: string;
}

/** A link that was just made, on the page this once; none where it was shown or isn't the viewer's. */
export function madeLinkPart(viewer: Viewer, { made: id, mail, about = "" }: MadeWish): PeoplePart[] {
  const held = id === undefined ? null : takeHeld<HeldLink>(linkKey(viewer, id));
  if (id === undefined || !held) return [];
  const { words } = viewer;
  const offer = mailOffer(viewer);
  if (offer === "on") holdOnce(mailKey(viewer, id), held);
  const sent = words.has(`mail.why.${mail}`) ? { refusal: words.say(`mail.why.${mail}`), errors: {} } : undefined;
  const hidden = [
    { name: "link", value: id },
    { name: "id", value: about },
  ];
  return [
    peoplePart(words.say("people.link.margin"), {
      heading: words.say(`people.link.${held.kind}`, { name: held.name }),
      paragraphs: [
        words.say("people.link.text", { days: LINK_DAYS }),
        ...(offer === "off" ? [] : [words.say(`mail.offer.${offer}`)]),
      ],
      once: { lines: [linkAddress(held)], picture: null },
      forms: offer === "on" ? [{ act: "mail", form: smallForm(words, "mail", [], sent, hidden) }] : [],
    }),
  ];
}

/** How many students a coach has in charge, as far as the viewer may know. */
function sayHeld({ scope, words }: Viewer, held: ReadonlySet<string>): string {
  const mine = [...held].filter((id) => isVisible(scope, id)).length;
  const { told, few } = tellCount(mine, held.size - mine, held.size - mine);
  if (few === "none") return String(told);
  return words.say(told === 0 ? "small-group.few" : "small-group.students", { told });
}

/** How many students nobody has in charge, as far as the viewer may know. */
function sayNobodys({ scope, words }: Viewer, nobodys: readonly string[]): string {
  const mine = nobodys.filter((id) => isVisible(scope, id)).length;
  const others = nobodys.length - mine;
  const { told, few } = tellCount(mine, others, others);
  return few === "none" ? words.say("people.nobodys", { count: told }) : words.say("people.nobodys.few", { told });
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
            ? sayHeld(viewer, new Set(charges.filter((each) => each.coachId === userId).map((each) => each.studentId)))
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
  const now = latestInstant(viewer);
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

/** What became of a press, from the words in the page's address; unknown ones say nothing. */
export function sayDone(words: Words, done: string | undefined, mail: string | undefined): string {
  if (mail === "gone") return words.say("mail.gone");
  return words.has(`people.done.${done}`) ? words.say(`people.done.${done}`) : "";
}

/** Everybody who works in the academy, what they are, and how many students each has in charge; never which. */
export function loadPeople(viewer: Viewer, { made, done, mail }: PeopleWish): PeoplePage {
  const { words, academy } = viewer;
  const now = chargesInForce(viewer);
  const give = opensPage("/people/charges", viewer.roles);
  return {
    title: words.say("people.title", { academy: academy.name }),
    documentTitle: words.say("document-title", { page: words.say("people.document-title") }),
    lede: words.say("people.lede"),
    back: { href: "/settings", label: words.say("people.back-settings") },
    notice: sayDone(words, done, mail),
    parts: [
      ...madeLinkPart(viewer, { made, mail }),
      peoplePart(words.say("people.margin.here"), {
        table: workingTable(viewer, now),
        links: [
          { href: "/people/new", label: words.say("people.invite") },
          { href: "/people/keeping", label: words.say("keeping.link-here") },
        ],
      }),
      peoplePart(words.say("people.margin.students"), {
        heading: sayNobodys(viewer, now.nobodys),
        paragraphs: [words.say(give ? "people.nobodys.give" : "people.nobodys.ask")],
        links: give ? [{ href: "/people/charges", label: words.say("people.charges") }] : [],
      }),
      ...openLinksPart(viewer),
      ...leftPart(viewer),
    ],
  };
}
