import { readErasures } from "@/db/read/erasures";
import { readNotices, readVisibleNotices } from "@/db/read/keeping";
import type { TableModel } from "@/lib/report/basic-model";
import type { PeoplePage, PeoplePart } from "@/lib/report/people-model";
import { ERASING_THRESHOLDS } from "@/lib/verdict/erasing-thresholds";
import { sayDay } from "@/lib/words/day-words";
import { mayPass } from "../access/matrix";
import { linkTables } from "../archive/table-links";
import { dayIn } from "../clock";
import type { Viewer } from "../gate";
import { sayMoment } from "../import/past-imports";
import { peoplePart, type Said, smallForm } from "../people/small-form";
import { whyOf } from "./keeping-desk";
import { findLeap } from "./watch-clock";

/** What the page is asked with: what a press did, or why it did nothing. */
export interface KeepingWish {
  readonly done?: string;
  readonly why?: string;
}

function clockPart(viewer: Viewer): PeoplePart[] {
  const { words } = viewer;
  const leap = findLeap(viewer);
  if (!leap) return [];
  const notice = ERASING_THRESHOLDS.noticeDays.value;
  const said = { from: sayMoment(viewer, leap.from), to: sayMoment(viewer, leap.to), notice };
  return [
    peoplePart(words.say("keeping.margin.clock"), {
      paragraphs: [words.say("keeping.clock", said)],
      forms: [{ act: "settle", form: smallForm(words, "keeping.settle", []) }],
    }),
  ];
}

function rulesPart({ words, academy }: Viewer): PeoplePart {
  const { noticeDays, copyDays, draftDays } = ERASING_THRESHOLDS;
  const said = {
    ...{ months: academy.keepMonths, notice: noticeDays.value, copies: copyDays.value, drafts: draftDays.value },
  };
  return peoplePart(words.say("keeping.margin.rules"), {
    paragraphs: [
      words.say("keeping.rules.records", said),
      words.say("keeping.rules.waiting", said),
      words.say("keeping.rules.links", said),
      words.say("keeping.rules.forms", said),
      words.say("erase.law"),
    ],
  });
}

type Seen = ReturnType<typeof readVisibleNotices>[number];

function sayWhat({ words }: Viewer, { alias, label }: Pick<Seen, "alias" | "label">): string {
  return label === null ? alias : words.say("keeping.link", { alias, label });
}

function dueTable(viewer: Viewer, seen: readonly Seen[]): TableModel {
  const { words } = viewer;
  const day = (text: string): string => sayDay(words, text, "day-year");
  return {
    caption: words.say("keeping.table"),
    columns: [
      { label: words.say("keeping.column.what"), align: "start" },
      { label: words.say("keeping.column.why"), align: "start" },
      { label: words.say("keeping.column.due"), align: "start" },
      { label: words.say("keeping.column.held"), align: "start" },
    ],
    rows: seen.map((each) => ({
      cells: [
        sayWhat(viewer, each),
        words.say(`keeping.kind.${each.notice.kind}`),
        day(each.notice.dueDay),
        each.notice.heldAt === null
          ? words.say("keeping.not-held")
          : words.say("keeping.held", { who: each.notice.heldBy ?? "", why: each.notice.why ?? "" }),
      ],
      tone: each.notice.heldAt === null ? "plain" : "quiet",
    })),
  };
}

function keepForms(viewer: Viewer, seen: readonly Seen[], why: string | undefined): PeoplePart["forms"] {
  const { words } = viewer;
  return seen.map((each) => {
    const { id, studentId, heldAt } = each.notice;
    const hidden = [
      { name: "noticeId", value: id },
      { name: "studentId", value: studentId ?? "" },
    ];
    const what = sayWhat(viewer, each);
    if (heldAt !== null) {
      const form = smallForm(words, "keeping.release", [], undefined, hidden);
      return { act: "release", form: { ...form, submit: words.say("keeping.release.of", { what }) } };
    }
    const wrong = why === id ? words.say("keeping.why-missing") : "";
    const said: Said = { refusal: wrong, errors: wrong === "" ? {} : { [whyOf(id)]: wrong } };
    const label = words.say("keeping.hold.why", { what });
    const fields = [{ name: whyOf(id), kind: "text", required: "yes", label }] as const;
    const form = smallForm(words, "keeping.hold", fields, said, hidden);
    return { act: "hold", form: { ...form, submit: words.say("keeping.hold.of", { what }) } };
  });
}

function duePart(viewer: Viewer, why: string | undefined): PeoplePart {
  const { words, db, scope } = viewer;
  const margin = words.say("keeping.margin.due");
  const all = readNotices(db, scope);
  if (all.length === 0) return peoplePart(margin, { paragraphs: [words.say("keeping.none")] });
  const counts = {
    records: all.filter(({ kind, heldAt }) => kind !== "link" && heldAt === null).length,
    links: all.filter(({ kind, heldAt }) => kind === "link" && heldAt === null).length,
    held: all.filter(({ heldAt }) => heldAt !== null).length,
  };
  const heading = words.say("keeping.counts", counts);
  // Whoever runs the academy and directs nobody in it learns how many, and no names.
  if (!mayPass("/people/keeping submitHold", viewer.roles))
    return peoplePart(margin, { heading, paragraphs: [words.say("keeping.counts-only")] });
  const seen = readVisibleNotices(db, scope);
  return peoplePart(margin, { heading, table: dueTable(viewer, seen), forms: keepForms(viewer, seen, why) });
}

function pastPart(viewer: Viewer): PeoplePart[] {
  const { words, db, scope, academy } = viewer;
  const past = readErasures(db, scope);
  if (past.length === 0) return [];
  const table: TableModel = {
    caption: words.say("keeping.past"),
    columns: [
      { label: words.say("keeping.past.when"), align: "start" },
      { label: words.say("keeping.past.why"), align: "start" },
      { label: words.say("keeping.past.who"), align: "start" },
      { label: words.say("erase.line.sessions"), align: "end" },
      { label: words.say("erase.line.readings"), align: "end" },
    ],
    rows: past.map(({ erasedAt, reason, who, sessions, readings }) => ({
      cells: [
        sayDay(words, dayIn(academy.zone, new Date(erasedAt)), "day-year"),
        words.say(`erase.reason.${reason}`),
        who,
        String(sessions),
        String(readings),
      ],
      tone: "plain",
    })),
  };
  return [peoplePart(words.say("keeping.margin.past"), { table })];
}

/** What is kept how long, what will be erased by the clock and when, and what was. */
export function loadKeeping(viewer: Viewer, { done, why }: KeepingWish): PeoplePage {
  const { words } = viewer;
  return linkTables(
    words,
    "keeping",
    {},
    {
      title: words.say("keeping.title"),
      documentTitle: words.say("document-title", { page: words.say("keeping.title") }),
      lede: words.say(viewer.academy.fixedToday === null ? "keeping.lede" : "keeping.lede-demo"),
      back: { href: "/people", label: words.say("colleague.back") },
      notice: done !== undefined && words.has(`keeping.done.${done}`) ? words.say(`keeping.done.${done}`) : "",
      parts: [...clockPart(viewer), duePart(viewer, why), rulesPart(viewer), ...pastPart(viewer)],
    },
  );
}
