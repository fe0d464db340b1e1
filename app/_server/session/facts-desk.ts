import { inTransaction } from "@/db/client";
import { readSaidGroup } from "@/db/read/history";
import { readRecordChanges } from "@/db/read/record-changes";
import { readFirstReaders } from "@/db/read/rereads";
import { readCaptures } from "@/db/read/sessions";
import { readStudent } from "@/db/read/students";
import { updateSessionFacts } from "@/db/write/session-facts";
import type { ClubGroup } from "@/lib/domain/club-group";
import { rowName } from "@/lib/domain/record-change";
import type { Session } from "@/lib/domain/session";
import { parseFactsForm, type WishedFacts } from "@/lib/ingest/parse-facts-form";
import type { FormModel } from "@/lib/report/form-model";
import { instantOf } from "../clock";
import { kindOf } from "../draft/draft-forms";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { loadAcademyRules } from "../season/student-record";
import { type DeskOutcome, findSession } from "./correct-desk";
import { buildFactsForm } from "./facts-form";
import { keepUntouched, sessionEntries } from "./session-entries";

/** The form of a session's facts among those that are kept. */
const FORM = "facts-form";

function factsDraft({ student }: StudentViewer, sessionId: string): string {
  return kindOf(FORM, student.studentId, sessionId);
}

/** The latest thing done to the facts of a session: who saw an older one has seen other facts. */
export function latestChange(viewer: StudentViewer, sessionId: string): string {
  const name = rowName({ table: "session", key: { id: sessionId } });
  const touching = readRecordChanges(viewer.db, viewer.student).filter(
    (change) => change.sessionId === sessionId || change.after.some((state) => rowName(state) === name),
  );
  return touching.map((change) => `${change.id}${change.undoneAt === null ? "" : "u"}`).join("-");
}

/** The form that says a session's facts anew; null: there is no such session. */
export function loadFactsForm(
  viewer: StudentViewer,
  sessionId: string,
  draftId: string,
  dropped?: string,
): FormModel | null {
  const { db, student, scope, academy, words } = viewer;
  const session = findSession(viewer, sessionId);
  if (!session) return null;
  const { alias, hand } = readStudent(db, student);
  const kept = findFormDraft(viewer, factsDraft(viewer, sessionId), draftId);
  const films = readCaptures(db, student).filter((film) => film.sessionId === sessionId);
  const draft = kept ?? { entries: sessionEntries(session, films, hand), errors: {}, refusal: "" };
  const seen = kept?.entries.find(([name]) => name === "seen")?.[1] ?? latestChange(viewer, sessionId);
  const form = buildFactsForm(words, {
    session,
    alias,
    grouping: loadAcademyRules(db, scope, academy).grouping,
    draft,
    readers: readFirstReaders(db, scope),
    hidden: [
      { name: "studentId", value: student.studentId },
      { name: "sessionId", value: sessionId },
      { name: "seen", value: seen },
    ],
  });
  return withKeep(viewer, form, { form: FORM, studentId: student.studentId, of: sessionId, draftId, dropped });
}

/** The group that was said stays as it was said where the form says the same group and club. */
function saidAgain(viewer: StudentViewer, session: Session, wished: WishedFacts, chosen: string): ClubGroup {
  const said = readSaidGroup(viewer.db, viewer.student, session.id);
  return chosen === session.clubGroup && wished.club === session.club ? (said as ClubGroup) : wished.clubGroup;
}

/** Says a session's facts anew, once, and judges anew; a refused form is kept with what is wrong in it. */
export async function saveFacts(viewer: StudentViewer, sessionId: string, data: FormData): Promise<DeskOutcome> {
  const outcome = submitOnce<DeskOutcome>(viewer, factsDraft(viewer, sessionId), data, () =>
    enterFacts(viewer, sessionId, data),
  );
  if (outcome.kind === "saved") await loadRules(viewer);
  return outcome;
}

function enterFacts(viewer: StudentViewer, sessionId: string, data: FormData): DeskOutcome {
  const { words, db, student, scope, academy } = viewer;
  const session = findSession(viewer, sessionId);
  if (!session) return { kind: "not-there" };
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): DeskOutcome => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, factsDraft(viewer, sessionId), data, errors, refusal, student.studentId),
  });
  const { grouping } = loadAcademyRules(db, scope, academy);
  const { birthYear, hand } = readStudent(db, student);
  const parsed = parseFactsForm(data, {
    today: viewer.today,
    grouping,
    birthYear,
    hand,
    readers: readFirstReaders(db, scope),
  });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues, grouping);
    return refuse(errors, words.say("correct.refusal", { problems: Object.keys(errors).length }));
  }
  const { why, ...wished } = parsed.value;
  const films = readCaptures(db, student).filter((film) => film.sessionId === sessionId);
  const sent = new Map([...data].flatMap(([name, value]) => (typeof value === "string" ? [[name, value]] : [])));
  const facts = keepUntouched(wished, sent, { session, films, hand });
  const clubGroup = saidAgain(viewer, session, parsed.value, String(data.get("clubGroup") ?? ""));
  const note = { who: viewer.name, why, now: instantOf(viewer.academy) };
  const outcome = inTransaction(db, () => {
    if (latestChange(viewer, sessionId) !== data.get("seen")) return { kind: "overtaken" } as const;
    return updateSessionFacts(db, student, sessionId, { ...facts, clubGroup }, note);
  });
  if (outcome.kind === "overtaken") {
    data.set("seen", latestChange(viewer, sessionId));
    return refuse({}, words.say("facts.overtaken"));
  }
  if (outcome.kind === "unknown-session") return { kind: "not-there" };
  if (outcome.kind === "reader-has-read" || outcome.kind === "being-read") {
    const said = words.say(`facts.${outcome.kind}`);
    return refuse({ reader: said }, words.say("correct.refusal", { problems: 1 }));
  }
  if (outcome.kind === "unchanged") return refuse({}, words.say("facts.unchanged"));
  return { kind: "saved" };
}
