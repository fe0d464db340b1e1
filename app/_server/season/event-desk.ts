import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { readEventLog } from "@/db/read/events";
import { readTrackKeys } from "@/db/read/tracks";
import { insertEvent, insertRebaseline, updateEventVoided, updatePainFrom } from "@/db/write/events";
import { insertHeight } from "@/db/write/students";
import type { FiledEvent } from "@/lib/domain/event-record";
import type { Fundamental } from "@/lib/domain/fundamental";
import { EVENT_FIELDS, parseEventForm, parseRebaselineForm } from "@/lib/ingest/parse-event-form";
import { instantOf } from "../clock";
import { whyNotRecorded } from "../consent/consent-gate";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { type StudentViewer, seesPain } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { loadAcademyRules } from "./student-record";

/** The words under which the form of an event is kept, and the one that says what begins anew at it. */
export const EVENT_FORM = "event-form";
export const REBASELINE_FORM = "rebaseline-form";

/** The kinds under which refused forms are kept. */
export function eventDraft(studentId: string): string {
  return kindOf(EVENT_FORM, studentId);
}
export function rebaselineDraft(eventId: string): string {
  return kindOf(REBASELINE_FORM, "", eventId);
}

/** What was measured of the student: only that can begin anew. A derived fundamental does where its first part does. */
export function measured({ db, scope, academy, student }: StudentViewer): readonly Fundamental[] {
  const read = new Set<string>(readTrackKeys(db, student).map((key) => key.fundamentalId));
  return loadAcademyRules(db, scope, academy).fundamentals.filter(
    (fundamental) => read.has(fundamental.id) || (fundamental.derivedFrom?.every((part) => read.has(part)) ?? false),
  );
}

/** An event of the student as the viewer may know it, taken back or not; null: there is none of that name. */
export function findEvent(viewer: StudentViewer, eventId: string): FiledEvent | null {
  const log = readEventLog(viewer.db, viewer.student, seesPain(viewer, viewer.student));
  return log.find((event) => event.id === eventId) ?? null;
}

/** What isn't asked of a kind is kept nowhere, not in a refused form either: words about pain least of all. */
function forgetUnasked(data: FormData): void {
  const asked: readonly string[] = EVENT_FIELDS[String(data.get("kind")) as keyof typeof EVENT_FIELDS] ?? [];
  for (const name of new Set(Object.values(EVENT_FIELDS).flat())) if (!asked.includes(name)) data.delete(name);
}

interface Added {
  readonly kind: "added";
  readonly eventId: string;
}

/**
 * Records an event, once, and judges anew; one that stands in for a wrong one takes that back in the same moment. A refused
 * form is kept with what is wrong in it.
 */
export async function addEvent(viewer: StudentViewer, data: FormData): Promise<Added | Refused> {
  const kind = eventDraft(viewer.student.studentId);
  const outcome = submitOnce<Added>(viewer, kind, data, () => enterEvent(viewer, data));
  if (outcome.kind === "added") await loadRules(viewer);
  return outcome;
}

function enterEvent(viewer: StudentViewer, data: FormData): Added | Refused {
  const { words, db, student } = viewer;
  const pain = seesPain(viewer, student);
  const parsed = parseEventForm(data, { today: viewer.today, pain: pain === null ? "not-told" : "told" });
  const wrong = findEvent(viewer, String(data.get("instead") ?? ""));
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => {
    forgetUnasked(data);
    const draftId = keepFormDraft(viewer, eventDraft(student.studentId), data, errors, refusal);
    return { kind: "refused", draftId };
  };
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("event-form.refusal", { problems: Object.keys(errors).length }));
  }
  // A pause for pain stops something, and a wrong event is put right: both stay possible.
  const why =
    wrong === null && !["injury", "pause"].includes(parsed.value.kind) ? whyNotRecorded(viewer, student) : null;
  if (why !== null) return refuse({}, why);
  if (wrong !== null && wrong.voidedAt !== null) return refuse({}, words.say("event-form.instead-gone"));
  const { heightCm, ...happened } = parsed.value;
  const eventId = randomUUID();
  const by = { who: viewer.name, now: instantOf(viewer.academy) };
  const instead = words.say("event-form.instead-why");
  inTransaction(db, () => {
    if (wrong !== null) updateEventVoided(db, student, { eventId: wrong.id, voidedAt: by.now });
    insertEvent(db, student, { id: eventId, ...happened, rebaselines: [] }, by);
    // What began anew at the wrong day begins anew at the right one, as a change of its own.
    if (wrong !== null && wrong.rebaselines.length > 0)
      insertRebaseline(db, student, { eventId, after: wrong.rebaselines, ...by, why: instead });
    // Whoever mends the days of a pause without knowing what hurts takes nothing of that away.
    if (wrong !== null && pain === null) updatePainFrom(db, student, { from: wrong.id, to: eventId });
    if (heightCm !== null) insertHeight(db, student, { day: happened.day, cm: heightCm });
  });
  return { kind: "added", eventId };
}

/** Takes an event back or puts it back, and judges anew. */
export async function moveEventBack(
  viewer: StudentViewer,
  eventId: string,
  wish: "take" | "put",
): Promise<"updated" | "unchanged"> {
  const voidedAt = wish === "take" ? instantOf(viewer.academy) : null;
  const { kind } = updateEventVoided(viewer.db, viewer.student, { eventId, voidedAt });
  if (kind === "updated") await loadRules(viewer);
  return kind;
}

interface Rebaselined {
  readonly kind: "changed" | "not-there";
}

/** Changes which tracks begin anew at an event, once, and judges anew; a refused form is kept. */
export async function changeRebaselines(
  viewer: StudentViewer,
  eventId: string,
  data: FormData,
): Promise<Rebaselined | Refused> {
  const outcome = submitOnce<Rebaselined>(viewer, rebaselineDraft(eventId), data, () =>
    enterRebaselines(viewer, eventId, data),
  );
  if (outcome.kind === "changed") await loadRules(viewer);
  return outcome;
}

function enterRebaselines(viewer: StudentViewer, eventId: string, data: FormData): Rebaselined | Refused {
  const { words, db, student } = viewer;
  const event = findEvent(viewer, eventId);
  if (event === null) return { kind: "not-there" };
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, rebaselineDraft(eventId), data, errors, refusal, student.studentId),
  });
  // What was ticked before and isn't measured any more may stay, and may be taken out.
  const offered = [...new Set([...measured(viewer).map((each) => each.id as string), ...event.rebaselines])];
  const parsed = parseRebaselineForm(data, offered);
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("event-form.anew.refusal", { problems: Object.keys(errors).length }));
  }
  const by = { who: viewer.name, now: instantOf(viewer.academy) };
  const made = insertRebaseline(db, student, { eventId, ...parsed.value, ...by });
  if (made.kind === "unchanged") return refuse({}, words.say("event-form.anew.unchanged"));
  return { kind: "changed" };
}
