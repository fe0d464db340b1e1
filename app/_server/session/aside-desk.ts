import { inTransaction } from "@/db/client";
import { readSaidGroup } from "@/db/read/history";
import { type FiledCapture, readCaptures } from "@/db/read/sessions";
import { readStudent } from "@/db/read/students";
import { updateSessionFacts } from "@/db/write/session-facts";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { Session } from "@/lib/domain/session";
import type { SessionFacts } from "@/lib/domain/session-change";
import { type AsidePart, parseAsideForm, type WishedAside } from "@/lib/ingest/parse-aside-form";
import type { FormModel } from "@/lib/report/form-model";
import { instantOf } from "../clock";
import { kindOf } from "../draft/draft-forms";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { asideReasonOf, buildAsideForm } from "./aside-form";
import { findSession } from "./correct-desk";
import { latestChange } from "./facts-desk";

/** What became of it; `part`: what was set aside or brought back. */
export type AsideOutcome =
  | { readonly kind: "saved"; readonly part: AsidePart }
  | { readonly kind: "not-there" }
  | Refused;

/** The form among those that are kept. */
const FORM = "aside-form";

function asideDraft({ student }: StudentViewer, sessionId: string): string {
  return kindOf(FORM, student.studentId, sessionId);
}

function filmsOf({ db, student }: StudentViewer, sessionId: string): readonly FiledCapture[] {
  return readCaptures(db, student).filter((film) => film.sessionId === sessionId);
}

/**
 * The form that sets a session aside or brings it back; null: there is no such session.
 *
 * @param of the fundamental from whose page somebody comes, as its address says it; it travels along
 */
export function loadAsideForm(
  viewer: StudentViewer,
  sessionId: string,
  draftId: string,
  { of, dropped }: { readonly of?: string | undefined; readonly dropped?: string | undefined } = {},
): FormModel | null {
  const { db, student, words } = viewer;
  const session = findSession(viewer, sessionId);
  if (!session) return null;
  const draft = findFormDraft(viewer, asideDraft(viewer, sessionId), draftId);
  const kept = (name: string): string | undefined => draft?.entries.find(([each]) => each === name)?.[1];
  const form = buildAsideForm(words, {
    session,
    films: filmsOf(viewer, sessionId),
    alias: readStudent(db, student).alias,
    who: viewer.name,
    draft,
    hidden: [
      { name: "studentId", value: student.studentId },
      { name: "sessionId", value: sessionId },
      { name: "of", value: kept("of") ?? of ?? "" },
      { name: "seen", value: kept("seen") ?? latestChange(viewer, sessionId) },
    ],
  });
  return withKeep(viewer, form, { form: FORM, studentId: student.studentId, of: sessionId, draftId, dropped });
}

/** Sets a session or one of its films aside, or brings it back, once, and judges anew. */
export async function saveAside(viewer: StudentViewer, sessionId: string, data: FormData): Promise<AsideOutcome> {
  const outcome = submitOnce<AsideOutcome>(viewer, asideDraft(viewer, sessionId), data, () =>
    enterAside(viewer, sessionId, data),
  );
  if (outcome.kind === "saved") await loadRules(viewer);
  return outcome;
}

/** A session's facts as they are on file, but for what is set aside or brought back. */
function factsWith(
  viewer: StudentViewer,
  session: Session,
  films: readonly FiledCapture[],
  { part, way, why }: WishedAside,
): SessionFacts {
  const reason = way === "aside" ? why : null;
  const { day, club, circumstance, aid, daysSincePractice, note, reader, solid, balls } = session;
  return {
    ...{ day, club, circumstance, aid, daysSincePractice, note, reader, solid, balls },
    clubGroup: readSaidGroup(viewer.db, viewer.student, session.id) as ClubGroup,
    setAsideReason: part === "session" ? reason : session.setAsideReason,
    captures: films.map(({ sessionId: _session, ...film }) =>
      film.view === part ? { ...film, setAsideReason: reason } : film,
    ),
  };
}

function enterAside(viewer: StudentViewer, sessionId: string, data: FormData): AsideOutcome {
  const { words, db, student, academy } = viewer;
  const session = findSession(viewer, sessionId);
  if (!session) return { kind: "not-there" };
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): AsideOutcome => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, asideDraft(viewer, sessionId), data, errors, refusal, student.studentId),
  });
  const parsed = parseAsideForm(data);
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("correct.refusal", { problems: Object.keys(errors).length }));
  }
  const { part, way, why } = parsed.value;
  const films = filmsOf(viewer, sessionId);
  const note = { who: viewer.name, why, now: instantOf(academy) };
  const outcome = inTransaction(db, () => {
    if (latestChange(viewer, sessionId) !== data.get("seen")) return { kind: "overtaken" } as const;
    const now = asideReasonOf(session, films, part);
    if (now === undefined || (now === null) !== (way === "aside")) return { kind: "overtaken" } as const;
    return updateSessionFacts(db, student, sessionId, factsWith(viewer, session, films, parsed.value), note);
  });
  if (outcome.kind === "changed") return { kind: "saved", part };
  if (outcome.kind === "unknown-session") return { kind: "not-there" };
  data.set("seen", latestChange(viewer, sessionId));
  data.delete("what");
  return refuse({}, words.say("aside.overtaken"));
}
