import { randomUUID } from "node:crypto";
import { redirect } from "next/navigation";

/** A form that is kept as it is typed into. */
export interface DraftForm {
  /** Where it is filled in. */
  readonly page: (studentId: string, of: string) => string;
  /** Whether it is about one student. */
  readonly about: "student" | "nobody";
  /** What of the student or the academy it is filled in for, by whose id its drafts are told apart; absent: for nothing else. */
  readonly of?: "session" | "event" | "drill" | "read-back" | "draw" | "request" | "library" | "definition";
  /**
   * Fields that the browser may keep while the server can't be reached; a name ending in `.` stands for all that begin
   * so. Never a name, a note, an aid, a film or a place of pain: a browser is read by whoever sits down at it.
   */
  readonly browserKeeps: readonly string[];
}

/** A form about one session of a student, or something else of one that its address names. */
function within(
  room: string,
  of: NonNullable<DraftForm["of"]>,
  end: string,
  browserKeeps: readonly string[],
): DraftForm {
  return {
    page: (studentId, id) => `/students/${studentId}/${room}/${encodeURIComponent(id)}${end}`,
    about: "student",
    of,
    browserKeeps,
  };
}

/** A form about something of the academy's that its address names. */
function beneath(
  room: string,
  of: NonNullable<DraftForm["of"]>,
  end: string,
  browserKeeps: readonly string[],
): DraftForm {
  return { page: (_nobody, id) => `${room}/${encodeURIComponent(id)}${end}`, about: "nobody", of, browserKeeps };
}

const CAMERA_NUMBERS = ["squareness", "offBy", "pointing", "across", "plumb", "lens", "hands", "distance", "beside"];
const CAMERA_SIDES = ["pointingSide", "acrossSide", "plumbSide", "besideSide", "frames", "shutter", "placement"];

const CAMERA = [...CAMERA_NUMBERS, ...CAMERA_SIDES].map((name) => `${name}.`);
const FACTS = ["day", "clubGroup", "circumstance", "daysSincePractice", "solid", "balls", ...CAMERA];

const DOSE = ["reps", "minutes", "daysAWeek", "remeasureDays"];

const MEASURING = ["reading", "camera", "yaw", "roll", "offset", "low", "high", "least", "most", "worthwhile"];

/** The forms by the word with which the kind of their drafts begins. A new form is one more line. */
export const DRAFT_FORMS: Readonly<Record<string, DraftForm>> = {
  "session-form": {
    page: (studentId) => `/students/${studentId}/sessions/new`,
    about: "student",
    browserKeeps: ["r.", ...FACTS],
  },
  // Of the students' own fields the readings alone: what else begins with their ids may be a note.
  "group-form": {
    page: () => "/record/group",
    about: "nobody",
    browserKeeps: ["r.", "day", "clubGroup", "circumstance", ...CAMERA],
  },
  "correct-form": within("sessions", "session", "/correct", ["r."]),
  "facts-form": within("sessions", "session", "/facts", FACTS),
  "aside-form": within("sessions", "session", "/aside", []),
  "move-form": within("sessions", "session", "/move", []),
  "split-form": within("sessions", "session", "/split", ["swings", "day", "clubGroup"]),
  "merge-form": { page: (studentId) => `/students/${studentId}/merge`, about: "student", browserKeeps: [] },
  "student-form": { page: () => "/students/new", about: "nobody", browserKeeps: [] },
  "event-form": {
    page: (studentId) => `/students/${studentId}/events/new`,
    about: "student",
    browserKeeps: ["day"],
  },
  "rebaseline-form": within("events", "event", "", []),
  "drill-form": {
    page: (studentId) => `/students/${studentId}/drills/new`,
    about: "student",
    browserKeeps: ["start", "reps", "minutes", "daysAWeek", "remeasureOn"],
  },
  "priority-form": {
    page: (studentId) => `/students/${studentId}/priority`,
    about: "student",
    browserKeeps: ["fundamentalId"],
  },
  "film-plan-form": {
    page: (studentId) => `/students/${studentId}/plan`,
    about: "student",
    browserKeeps: ["swings", "dueOn"],
  },
  // What a coach writes of a child stays on the server.
  "letter-form": { page: (studentId) => `/students/${studentId}/tell/letter`, about: "student", browserKeeps: [] },
  "drill-stop": within("drills", "drill", "", ["end"]),
  "goal-form": {
    page: (studentId) => `/students/${studentId}/goals`,
    about: "student",
    browserKeeps: ["low", "high", "from"],
  },
  "academy-goal-form": {
    page: () => "/settings/goals",
    about: "nobody",
    browserKeeps: ["low", "high", "from", "ageFrom", "ageTo"],
  },
  "owning-form": {
    page: () => "/settings/owning",
    about: "nobody",
    browserKeeps: ["sessions", "spanDays", "restDays", "share", "shareLow", "from"],
  },
  // What is written of a drill is the academy's, and names nobody; still a browser is read by whoever sits down at it.
  "library-form": { page: () => "/drills/library", about: "nobody", browserKeeps: DOSE },
  "library-change": beneath("/drills", "library", "/change", DOSE),
  "definition-form": { page: () => "/settings/fundamentals", about: "nobody", browserKeeps: MEASURING },
  "definition-change": beneath("/settings/fundamentals", "definition", "", MEASURING),
  "fair-form": { page: () => "/drills/lot", about: "nobody", browserKeeps: ["least", "spread", "looks", "days"] },
  "decision-form": within("drills", "drill", "/decide", ["next"]),
  "practice-form": {
    page: (studentId) => `/students/${studentId}/practice`,
    about: "student",
    browserKeeps: ["minutes.", "balls."],
  },
  "read-back-form": {
    page: (studentId) => `/students/${studentId}/read-back`,
    about: "student",
    browserKeeps: ["each"],
  },
  "read-back-values": within("read-back", "read-back", "", ["v."]),
  "reread-wish": { page: () => "/rereads/new", about: "nobody", browserKeeps: ["count"] },
  "reread-values": beneath("/rereads", "draw", "", ["v."]),
  "reread-second": beneath("/rereads", "draw", "", []),
  "handing-form": {
    page: (studentId) => `/students/${studentId}/handing-over`,
    about: "student",
    browserKeeps: ["from", "until"],
  },
  "consent-form": {
    page: (studentId) => `/students/${studentId}/consent`,
    about: "student",
    browserKeeps: ["from", "until"],
  },
  "withdrawal-form": {
    page: (studentId) => `/students/${studentId}/consent/withdraw`,
    about: "student",
    browserKeeps: ["withdrawnOn"],
  },
  "departure-form": {
    page: (studentId) => `/students/${studentId}/departed`,
    about: "student",
    browserKeeps: ["departedOn"],
  },
  "keeping-form": {
    page: () => "/settings/privacy",
    about: "nobody",
    browserKeeps: ["keepMonths", "linkDays", "ownConsentAge"],
  },
  "club-form": { page: () => "/settings/clubs/change", about: "nobody", browserKeeps: [] },
  "key-form": { page: () => "/settings/keys", about: "nobody", browserKeeps: [] },
  "invite-form": { page: () => "/people/new", about: "nobody", browserKeeps: [] },
  "charges-form": { page: () => "/people/charges", about: "nobody", browserKeeps: ["from", "until"] },
  "account-form": { page: () => "/account", about: "nobody", browserKeeps: [] },
  "family-link": { page: (studentId) => `/students/${studentId}/family`, about: "student", browserKeeps: [] },
  "family-answer": within("family", "request", "", []),
  settings: { page: () => "/settings", about: "nobody", browserKeeps: ["seasonStart"] },
};

const DROPPED = "dropped ";

/**
 * The kind under which a form's drafts are kept. One that is for a session, say, bears the session's id and no student's:
 * a session may turn out to be another student's.
 */
export function kindOf(form: string, studentId: string, of = ""): string {
  const spec = DRAFT_FORMS[form];
  if (spec?.of !== undefined) return `${form} ${of}`;
  return spec?.about === "student" ? `${form} ${studentId}` : form;
}

/** The form of a kind with what it is for; dropped ones have a mark before it. */
export interface KindRead {
  readonly form: string;
  readonly spec: DraftForm;
  /** Empty: about nobody, or the kind says only what of the student's. */
  readonly studentId: string;
  readonly of: string;
}

/** What a kind says; null: no form that is kept while typing. */
export function formOfKind(kind: string): KindRead | null {
  const text = undroppedKind(kind);
  const gap = text.indexOf(" ");
  const form = gap < 0 ? text : text.slice(0, gap);
  const id = gap < 0 ? "" : text.slice(gap + 1);
  const spec = Object.hasOwn(DRAFT_FORMS, form) ? DRAFT_FORMS[form] : undefined;
  if (!spec) return null;
  return { form, spec, studentId: spec.of === undefined ? id : "", of: spec.of === undefined ? "" : id };
}

/** Whose record a kind is about; null: nobody's, or it doesn't say. */
export function studentOfKind(kind: string): string | null {
  return formOfKind(kind)?.studentId || null;
}

export function droppedKind(kind: string): string {
  return `${DROPPED}${undroppedKind(kind)}`;
}

export function undroppedKind(kind: string): string {
  return kind.startsWith(DROPPED) ? kind.slice(DROPPED.length) : kind;
}

export function isDropped(kind: string): boolean {
  return kind.startsWith(DROPPED);
}

const ID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

export function isDraftId(text: string | undefined): text is string {
  return text !== undefined && ID.test(text);
}

/** What the address of a form says. */
export interface AskedForm {
  readonly draft?: string;
  readonly dropped?: string;
}

/**
 * The id of a form, from its address. A form without one is led to an address with a new one, so that a reload, Back and
 * a later visit are the same form, with scripts and without.
 *
 * @param more what else the address says; undefined: it doesn't say that
 */
export function requireDraftId(
  page: string,
  wished: string | undefined,
  dropped?: string,
  more: Readonly<Record<string, string | undefined>> = {},
): string {
  if (isDraftId(wished)) return wished;
  const said = Object.entries({ ...more, dropped: isDraftId(dropped) ? dropped : undefined }).flatMap(
    ([name, value]) => (value === undefined ? [] : [[name, value]]),
  );
  return redirect(`${page}?${new URLSearchParams([["draft", randomUUID()], ...said])}`);
}
