import { readEventLog, readRebaselines } from "@/db/read/events";
import { readHeights, readStudent } from "@/db/read/students";
import type { EventKind } from "@/lib/domain/student";
import { RECORDED_EVENTS } from "@/lib/ingest/parse-event-form";
import { buildEventPage, type EventSource, type SplitTrack } from "@/lib/report/build-event";
import { buildEventsPage } from "@/lib/report/build-events";
import type { FormModel } from "@/lib/report/form-model";
import type { HappenPage } from "@/lib/report/happen-model";
import type { Link } from "@/lib/report/page-model";
import { trackHistories } from "@/lib/verdict/track-history";
import { linkTables } from "../archive/table-links";
import { daysHere } from "../clock";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import { type StudentViewer, seesPain } from "../gate";
import { EVENT_FORM, eventDraft, findEvent, REBASELINE_FORM, rebaselineDraft } from "./event-desk";
import { buildBackForm, buildEventForm, buildRebaselineForm } from "./event-form";
import { loadAcademyRules, loadStudentRecord } from "./student-record";

/**
 * Everything recorded of a student, what was taken back too; what hurts is `said` on the page to whoever may know it, and in no
 * file.
 */
export function loadEvents(viewer: StudentViewer, pain: "said" | "left-out" = "said"): HappenPage {
  const { db, student } = viewer;
  const page = buildEventsPage(viewer.words, {
    student: readStudent(db, student),
    events: readEventLog(db, student, pain === "said" ? seesPain(viewer, student) : null),
    today: viewer.today,
    dayOf: daysHere(viewer.academy),
  });
  return linkTables(viewer.words, "events", { student: viewer.student.studentId }, page);
}

/** What was measured, with the sessions before an event's day and since; the same that a chart draws. */
function splitTracks(viewer: StudentViewer, day: string): readonly SplitTrack[] {
  const rules = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  const tracks = trackHistories(loadStudentRecord(viewer.db, viewer.student, rules), rules.today);
  return rules.fundamentals.flatMap((fundamental) => {
    const days = tracks
      .filter((track) => track.fundamental.id === fundamental.id)
      .flatMap((track) => track.sessions.map((entry) => entry.session.day));
    const before = days.filter((each) => each < day).length;
    return days.length === 0 ? [] : [{ fundamental, before, since: days.length - before }];
  });
}

/** One event with what can be done to it. */
export interface EventRoom {
  readonly page: HappenPage;
  /** Null: nothing was measured, or the event is taken back. */
  readonly rebaseline: FormModel | null;
  readonly back: FormModel;
}

/** The page of one event; null: there is none of that name. */
export function loadEvent(viewer: StudentViewer, eventId: string, draftId: string, dropped?: string): EventRoom | null {
  const { words, db, student } = viewer;
  const event = findEvent(viewer, eventId);
  if (event === null) return null;
  const source: EventSource = {
    student: readStudent(db, student),
    event,
    tracks: splitTracks(viewer, event.day),
    changes: readRebaselines(db, student, seesPain(viewer, student)).filter((change) => change.eventId === eventId),
    today: viewer.today,
    dayOf: daysHere(viewer.academy),
  };
  const hidden = [
    { name: "studentId", value: student.studentId },
    { name: "eventId", value: event.id },
  ];
  const state = event.voidedAt === null ? "stands" : "taken-back";
  const draft = findFormDraft(viewer, rebaselineDraft(eventId), draftId);
  return {
    page: buildEventPage(words, source),
    rebaseline:
      state === "taken-back" || source.tracks.length === 0
        ? null
        : withKeep(viewer, buildRebaselineForm(words, source, draft), {
            ...{ form: REBASELINE_FORM, studentId: student.studentId, of: eventId },
            ...{ draftId, dropped },
          }),
    back: buildBackForm(words, "event", state, hidden),
  };
}

/** The form of an event, and the ways to those of the other kinds. */
export interface EventFormRoom {
  readonly form: FormModel;
  readonly kinds: { readonly label: string; readonly links: readonly (Link & { readonly current: "yes" | "no" })[] };
}

/** The kinds that the viewer may record; a pause without a reason is offered to who may not know the reason, and stays one. */
function kindsFor(viewer: StudentViewer, current: EventKind | undefined): readonly EventKind[] {
  if (seesPain(viewer, viewer.student) === null) return RECORDED_EVENTS["not-told"];
  return RECORDED_EVENTS.told.filter((kind) => kind !== "pause" || current === "pause");
}

/** What the address of the form says. */
export interface AskedEvent {
  readonly draft?: string;
  readonly dropped?: string;
  readonly kind?: string;
  readonly instead?: string;
}

/** The form that records what happened: the kind that was chosen, or the wrong event's. */
export function loadEventForm(viewer: StudentViewer, draftId: string, asked: AskedEvent): EventFormRoom {
  const { words, db, student } = viewer;
  const { studentId } = student;
  const draft = findFormDraft(viewer, eventDraft(studentId), draftId);
  const typed = new Map(draft?.entries);
  const instead = findEvent(viewer, typed.get("instead") ?? asked.instead ?? "");
  const kinds = kindsFor(viewer, instead?.kind);
  const chosen = [typed.get("kind"), asked.kind, instead?.kind, "new-club"];
  const kind = chosen.flatMap((word) => kinds.find((each) => each === word) ?? [])[0] ?? "new-club";
  const height = readHeights(db, student).find((each) => each.day === instead?.day);
  const heightCm = height === undefined ? "" : String(height.cm);
  const { alias } = readStudent(db, student);
  const form = buildEventForm(words, { alias, kind, today: viewer.today, instead, heightCm, draft });
  const more = instead === null ? "" : `&instead=${instead.id}`;
  return {
    form: withKeep(viewer, form, { form: EVENT_FORM, studentId, draftId, dropped: asked.dropped }),
    kinds: {
      label: words.say("event-form.kind"),
      links: kinds.map((each) => ({
        href: `/students/${studentId}/events/new?kind=${each}${more}`,
        label: words.say(`event.${each}`),
        current: each === kind ? "yes" : "no",
      })),
    },
  };
}
