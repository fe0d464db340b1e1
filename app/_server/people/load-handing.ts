import { readAskings } from "@/db/read/asking";
import { readAssignments } from "@/db/read/drills";
import { type NamedCharge, readOpenMatters } from "@/db/read/handing";
import { readReadBacks } from "@/db/read/read-backs";
import { readStudent } from "@/db/read/students";
import { askingOf } from "@/lib/domain/asking";
import { chargeOn } from "@/lib/domain/charge";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import type { TableModel } from "@/lib/report/basic-model";
import type { PeoplePage, PeoplePart } from "@/lib/report/people-model";
import { buildPrivacyLinks } from "@/lib/report/privacy-links";
import { sayDay } from "@/lib/words/day-words";
import { currentInstant, dayIn } from "../clock";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import { HANDING_FORM, handingDraft } from "./handing-desk";
import { buildHandingForm, type HandingWish } from "./handing-form";
import { type HandingState, handingState } from "./handing-state";
import { trySettlingDrafts } from "./settle-drafts";
import { peoplePart, smallForm } from "./small-form";

/** What the page is asked with: its form, and what became of a press. */
export interface AskedHanding extends HandingWish {
  readonly draft?: string;
  readonly dropped?: string;
  readonly done?: string;
}

function sayFrom({ words }: StudentViewer, day: string): string {
  return day === SINCE_EVER ? words.say("handing.since-ever") : sayDay(words, day, "day-year");
}

function chargeTable(viewer: StudentViewer, { charges }: HandingState): TableModel {
  const { words, today } = viewer;
  const columns = ["coach", "kind", "from", "until", "giver", "note"];
  return {
    caption: words.say("handing.table"),
    columns: columns.map((name) => ({ label: words.say(`handing.column.${name}`), align: "start" as const })),
    rows: charges.toReversed().map((each) => ({
      cells: [
        each.coach,
        words.say(`handing.kind.${each.kind}`),
        sayFrom(viewer, each.fromDay),
        sayUntil(viewer, each),
        each.fromCoach || words.say("handing.nobody"),
        each.note ?? "",
      ],
      tone: chargeOn(each, today) === "over" ? ("quiet" as const) : ("plain" as const),
    })),
  };
}

function sayUntil({ words, academy }: StudentViewer, { untilDay, endedAt, endedBy, fromDay }: NamedCharge): string {
  if (endedAt !== null) {
    const ended = { day: sayDay(words, dayIn(academy.zone, new Date(endedAt)), "day-year"), who: endedBy ?? "" };
    return words.say("handing.ended", ended);
  }
  if (untilDay === null) return words.say("handing.open-end");
  return untilDay < fromDay ? words.say("handing.never") : sayDay(words, untilDay, "day-year");
}

/** Buttons that take back what is planned, or end a cover. */
function pressPart(viewer: StudentViewer, { planned, covers, may }: HandingState): PeoplePart[] {
  const { words, student, today } = viewer;
  const standing = [...(planned === null ? [] : [planned]), ...covers];
  if (standing.length === 0) return [];
  const forms = standing.map((each) => {
    const runs = chargeOn(each, today) === "in-force" ? "end" : "back";
    const hidden = [
      { name: "chargeId", value: each.id },
      { name: "studentId", value: student.studentId },
    ];
    const form = smallForm(words, `handing.${runs}`, [], undefined, hidden);
    const days = { coach: each.coach, from: sayFrom(viewer, each.fromDay), until: sayUntil(viewer, each) };
    return {
      form: { ...form, submit: words.say(`handing.${runs}.of`, { coach: each.coach, kind: each.kind }) },
      days,
      each,
    };
  });
  return [
    peoplePart(words.say("handing.margin.standing"), {
      heading: words.say("handing.standing", { count: standing.length }),
      paragraphs: forms.map(({ each, days }) => words.say(`handing.standing.${each.kind}`, days)),
      forms: may === "hand-over" ? forms.map(({ form }) => ({ act: "back", form })) : [],
    }),
  ];
}

function formPart(viewer: StudentViewer, state: HandingState, draftId: string, asked: AskedHanding): PeoplePart {
  const { words, db, student, today } = viewer;
  const margin = words.say("handing.margin.form");
  const coach = state.own.map((each) => each.coach).join(", ") || words.say("handing.nobody");
  if (state.may === "look")
    return peoplePart(margin, {
      heading: words.say("handing.not-yours"),
      paragraphs: [words.say("handing.not-yours.text", { coach })],
    });
  if (state.coaches.length === 0)
    return peoplePart(margin, { heading: words.say("handing.alone"), paragraphs: [words.say("handing.alone.text")] });
  const { studentId } = student;
  const draft = findFormDraft(viewer, handingDraft(studentId), draftId);
  const { coaches } = state;
  const form = buildHandingForm(words, draft, { coaches, today, wish: asked, studentId });
  const giver = state.own.at(-1);
  const wasGiven = giver?.fromCoachId && coaches.some(({ userId }) => userId === giver.fromCoachId);
  return peoplePart(margin, {
    heading: words.say("handing.form.heading", { alias: readStudent(db, student).alias }),
    paragraphs: [words.say("handing.form.own"), words.say("handing.form.cover")],
    links: wasGiven
      ? [
          {
            href: `/students/${studentId}/handing-over?to=${giver.fromCoachId}`,
            label: words.say("handing.give-back", { coach: giver.fromCoach }),
          },
        ]
      : [],
    forms: [
      {
        act: "hand",
        form: withKeep(viewer, form, { form: HANDING_FORM, studentId, draftId, dropped: asked.dropped }),
      },
    ],
  });
}

/** What goes along, and what is to be settled first, each in a sentence. */
function alongPart(viewer: StudentViewer): PeoplePart {
  const { words, db, student, academy } = viewer;
  const page = `/students/${student.studentId}`;
  const { drafts, links, draws } = readOpenMatters(db, student, viewer.scope, currentInstant());
  const drills = readAssignments(db, student).filter(({ end }) => end === null);
  const decided = readAskings(db, student);
  const plans = decided.filter((each) => each.state === "planned" && askingOf(decided, each) === each);
  const readBacks = readReadBacks(db, student).filter(
    ({ finishedAt, droppedAt }) => finishedAt === null && droppedAt === null,
  );
  const firstEnd =
    links.firstEnd === null ? "" : sayDay(words, dayIn(academy.zone, new Date(links.firstEnd)), "day-year");
  const list = drills.map(({ drill }) => drill).join(", ");
  return peoplePart(words.say("handing.margin.along"), {
    heading: words.say("handing.along"),
    paragraphs: [
      ...drafts.map(({ name, count }) => words.say("handing.along.drafts", { name, count })),
      ...(drafts.length === 0 ? [words.say("handing.along.no-drafts")] : []),
      words.say("handing.along.links", { live: links.live, firstEnd }),
      words.say("handing.along.drills", { count: drills.length, list }),
      words.say("handing.along.plans", { count: plans.length }),
      ...readBacks.map(({ reader, items, typed }) => words.say("handing.along.read-back", { reader, items, typed })),
      // How many others are in a draw is told to whoever sees them all.
      ...draws.map(({ reader, others, unseen }) =>
        unseen > 0
          ? words.say("handing.along.draw-unseen", { reader })
          : words.say("handing.along.draw", { reader, others }),
      ),
      words.say("handing.along.reader"),
    ],
    links: [
      { href: `${page}/handing-over/inherit`, label: words.say("inherit.open") },
      { href: `${page}/drills`, label: words.say("drills") },
      ...(readBacks.length > 0 ? [{ href: `${page}/read-back`, label: words.say("read-back") }] : []),
      ...(draws.length > 0 ? [{ href: "/rereads", label: words.say("reread.door") }] : []),
    ],
  });
}

/** Who has the student, the form that gives them to another coach, and what that takes along. */
export function loadHanding(viewer: StudentViewer, draftId: string, asked: AskedHanding): PeoplePage {
  trySettlingDrafts(viewer);
  const { words, db, student } = viewer;
  const state = handingState(viewer);
  const { alias, id } = readStudent(db, student);
  const coach = state.own.map((each) => each.coach).join(", ");
  return {
    title: words.say("handing.title", { alias, coach, held: coach === "" ? "no" : "yes" }),
    documentTitle: words.say("document-title", { page: words.say("handing.document-title") }),
    lede: words.say("handing.lede"),
    back: { href: `/students/${id}`, label: words.say("fundamental-page.back", { alias }) },
    notice:
      asked.done !== undefined && words.has(`handing.done.${asked.done}`)
        ? words.say(`handing.done.${asked.done}`)
        : "",
    parts: [
      ...pressPart(viewer, state),
      formPart(viewer, state, draftId, asked),
      alongPart(viewer),
      ...(state.charges.length === 0
        ? []
        : [
            peoplePart(words.say("handing.margin.past"), {
              heading: words.say("handing.table"),
              table: chargeTable(viewer, state),
            }),
          ]),
      peoplePart(words.say("privacy.links"), { links: buildPrivacyLinks(words, id, "handing-over") }),
    ],
  };
}

/** Where somebody goes on who has handed a student over: from today on the student's own pages may be none of theirs. */
export function pageAfterHanding(viewer: StudentViewer): string {
  const { own } = handingState(viewer);
  const { student, roles, userId } = viewer;
  const keeps = roles.includes("director") || own.some(({ coachId }) => coachId === userId);
  return keeps ? `/students/${student.studentId}/handing-over?done=handed` : "/students?done=handed";
}
