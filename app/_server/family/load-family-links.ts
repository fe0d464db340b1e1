import { readFamilyLinks, readFamilyRequests, readOpenings } from "@/db/read/family-links";
import { readStudent } from "@/db/read/students";
import { familyLinkState } from "@/lib/domain/family-link";
import {
  type FamilyLinksSource,
  familyLinksTable,
  familyOpeningsTable,
  familyRequestsTable,
} from "@/lib/report/build-family-links";
import type { PeoplePage, PeoplePart } from "@/lib/report/people-model";
import { buildPrivacyLinks } from "@/lib/report/privacy-links";
import { sayDay } from "@/lib/words/day-words";
import { sayHour } from "@/lib/words/say-hour";
import { linkTables } from "../archive/table-links";
import { dayIn, daysHere, readClock } from "../clock";
import { configuredOrigins } from "../door/origin";
import { kindOf } from "../draft/draft-forms";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import { latestInstant } from "../keeping/watch-clock";
import { takeHeld } from "../people/shown-once";
import { peoplePart, smallForm } from "../people/small-form";
import { heldLinkKey } from "./family-keys";
import { FAMILY_LINK, type HeldFamilyLink, mayMakeLinks, mayShare } from "./link-desk";

/** What the page of a family's links is asked with. */
export interface FamilyLinksWish {
  readonly draft?: string;
  readonly dropped?: string;
  /** A link just made. */
  readonly made?: string;
  readonly done?: string;
}

/** Everything that the lists of a student's links rest on. */
export function familyLinksSource(viewer: StudentViewer): FamilyLinksSource {
  const { db, student, words, academy } = viewer;
  return {
    links: readFamilyLinks(db, student),
    openings: readOpenings(db, student),
    requests: readFamilyRequests(db, student),
    consent: mayShare(viewer) ? "given" : "missing",
    now: latestInstant(viewer),
    dayOf: daysHere(viewer.academy),
    sayAt: (instant) => sayHour(words, instant, academy.zone, dayIn(academy.zone, readClock())),
  };
}

function madePart(viewer: StudentViewer, id: string | undefined): PeoplePart[] {
  const held = id === undefined ? null : takeHeld<HeldFamilyLink>(heldLinkKey(viewer, id));
  if (!held) return [];
  const { words } = viewer;
  const until = sayDay(words, daysHere(viewer.academy)(held.expiresAt), "day-year");
  return [
    peoplePart(words.say("family-links.made.margin"), {
      heading: words.say("family-links.made", { label: held.label }),
      paragraphs: [words.say("family-links.made.text", { until })],
      once: { lines: [`${configuredOrigins()[0] ?? ""}${held.path}`], picture: null },
    }),
  ];
}

function newPart(viewer: StudentViewer, draftId: string, dropped: string | undefined): PeoplePart {
  const { words, student, academy } = viewer;
  const may = mayMakeLinks(viewer);
  const margin = words.say("family-links.margin.new");
  if (may !== "yes") {
    const more = may === "no-address" ? [words.say("family-links.no-address.do")] : [];
    return peoplePart(margin, {
      heading: words.say(`family-links.${may}.heading`),
      paragraphs: [words.say(`family-links.${may}`), ...more],
      links:
        may === "no-consent"
          ? [{ href: `/students/${student.studentId}/consent`, label: words.say("family-links.no-consent.link") }]
          : [],
    });
  }
  const kept = findFormDraft(viewer, kindOf(FAMILY_LINK, student.studentId), draftId);
  const label = kept?.entries.find(([name]) => name === "label")?.[1] ?? "";
  const said = { refusal: kept?.refusal ?? "", errors: kept?.errors ?? {} };
  const form = smallForm(words, FAMILY_LINK, [{ name: "label", kind: "text", required: "yes", value: label }], said);
  const shown = { form: FAMILY_LINK, studentId: student.studentId, draftId, dropped };
  return peoplePart(margin, {
    heading: words.say("family-link.heading"),
    paragraphs: [words.say("family-link.text", { days: academy.linkDays })],
    forms: [{ act: "make", form: withKeep(viewer, form, shown) }],
  });
}

function press(viewer: StudentViewer, act: "renew" | "revoke", link: { readonly id: string; readonly label: string }) {
  const hidden = [
    { name: "id", value: link.id },
    { name: "studentId", value: viewer.student.studentId },
  ];
  const submit = viewer.words.say(`family-links.${act}`, { label: link.label });
  const bare = { heading: "", explains: "", parts: [], grid: null, refusal: "" };
  return { act, form: { ...bare, submit, hidden } };
}

function linksParts(viewer: StudentViewer, source: FamilyLinksSource): PeoplePart[] {
  const { words, academy } = viewer;
  const state = (link: (typeof source.links)[number]) => familyLinkState(link, source.now);
  const ending = source.links.filter((link) => state(link) === "ending");
  const open = source.links.filter((link) => ["open", "ending"].includes(state(link)));
  const days = { days: academy.linkDays };
  const until = (instant: string): string => sayDay(words, source.dayOf(instant), "day-year");
  const table = familyLinksTable(words, source);
  return [
    ...(ending.length === 0
      ? []
      : [
          peoplePart(words.say("family-links.margin.ending"), {
            paragraphs: ending.map(({ label, expiresAt }) =>
              words.say("family-links.ending", { label, until: until(expiresAt) }),
            ),
            forms: ending.map((link) => press(viewer, "renew", link)),
          }),
        ]),
    peoplePart(words.say("family-links.margin.all"), {
      table,
      paragraphs: [
        ...(table === null ? [words.say("family-links.none")] : []),
        ...(open.length === 0 ? [] : [words.say("family-links.renew.text", days)]),
      ],
      forms: open.flatMap((link) => [
        ...(state(link) === "ending" ? [] : [press(viewer, "renew", link)]),
        press(viewer, "revoke", link),
      ]),
    }),
  ];
}

function requestsPart(viewer: StudentViewer, source: FamilyLinksSource): PeoplePart {
  const { words, student } = viewer;
  const open = source.requests.filter(({ settledAt }) => settledAt === null);
  return peoplePart(words.say("family-links.margin.requests"), {
    table: familyRequestsTable(words, source),
    paragraphs: source.requests.length === 0 ? [words.say("family-links.requests.none")] : [],
    links: open.map(({ id, kind, askedAt }) => ({
      href: `/students/${student.studentId}/family/${id}`,
      label: words.say("family-links.settle", {
        asked: words.say(`family-links.request.${kind}`),
        day: sayDay(words, source.dayOf(askedAt), "short"),
      }),
    })),
  });
}

/** The coach's page of a family's links: a new one, all of them with their openings, and what the family asks for. */
export function loadFamilyLinks(viewer: StudentViewer, draftId: string, wish: FamilyLinksWish): PeoplePage {
  const { words, db, student } = viewer;
  const { alias } = readStudent(db, student);
  const source = familyLinksSource(viewer);
  const done = `family-links.done.${wish.done ?? ""}`;
  return linkTables(
    words,
    "family-links",
    { student: student.studentId },
    {
      title: words.say("family-links.title", { alias }),
      documentTitle: words.say("document-title", { page: words.say("family-links.document-title") }),
      lede: words.say("family-links.lede"),
      back: { href: `/students/${student.studentId}`, label: words.say("family-links.back", { alias }) },
      notice: words.has(done) ? words.say(done) : "",
      parts: [
        ...madePart(viewer, wish.made),
        ...linksParts(viewer, source),
        newPart(viewer, draftId, wish.dropped),
        requestsPart(viewer, source),
        peoplePart(words.say("family-links.margin.openings"), {
          table: familyOpeningsTable(words, source),
          paragraphs: [
            ...(source.openings.length === 0 ? [words.say("family-links.openings", { count: 0 })] : []),
            words.say("family-links.openings.text"),
          ],
        }),
        peoplePart(words.say("family-links.margin.more"), {
          links: buildPrivacyLinks(words, student.studentId, "family"),
        }),
      ],
    },
  );
}
