import { readStudent } from "@/db/read/students";
import { VIEWS } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import { collectIssues } from "@/lib/ingest/form-fields";
import { readCaptures } from "@/lib/ingest/parse-capture-form";
import { buildCaptureAnswer } from "@/lib/report/build-capture-answer";
import type { CaptureAnswer } from "@/lib/report/capture-answer-model";
import type { FormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { keepLooked } from "../draft/submit-once";
import type { StudentViewer, Viewer } from "../gate";
import { loadAcademyRules } from "../season/student-record";
import { sessionDraft } from "./session-desk";

/**
 * What each view's film shows, from the form as it stands, one a view; a view with a field that can't be read answers with
 * what is wrong. Nothing is kept, and nothing that is on file of the student is looked at but the hand.
 */
export function answerCaptures(viewer: StudentViewer, data: FormData): readonly CaptureAnswer[] {
  return answerFor(viewer, readStudent(viewer.db, viewer.student).hand, data);
}

/** The same for whoever plays with that hand. */
export function answerFor(viewer: Viewer, hand: Hand, data: FormData): readonly CaptureAnswer[] {
  const { words, db } = viewer;
  const { fundamentals } = loadAcademyRules(db, viewer.scope, viewer.academy);
  const { issues, add } = collectIssues();
  const captures = readCaptures(data, hand, add);
  return VIEWS.map((view) => {
    const wrong = issues.filter((issue) => issue.field.endsWith(`.${view}`) && issue.code !== "label-missing");
    const entered = captures.find((each) => each.view === view);
    if (entered && wrong.length === 0) return buildCaptureAnswer(words, entered, fundamentals, hand);
    const said = entered ? Object.values(sayFieldIssues(words, wrong)) : [words.say("capture.not-filmed")];
    return { view, heading: said.join(" "), caption: "", columns: ["", "", ""], rows: [], next: "", notes: [] };
  });
}

/** The same from a draft; a new form answers as one where nobody looked. */
export function answerDraft(viewer: StudentViewer, draft: FormDraft | null): readonly CaptureAnswer[] {
  const data = new FormData();
  for (const [name, value] of draft?.entries ?? []) data.append(name, value);
  return answerCaptures(viewer, data);
}

/** Keeps the form as it stands, so that a page without scripts can answer; returns the draft's id. */
export function keepForAnswer(viewer: StudentViewer, data: FormData): string {
  return keepLooked(viewer, sessionDraft(viewer.student.studentId), data);
}
