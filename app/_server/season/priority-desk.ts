import { insertPriority } from "@/db/write/priorities";
import type { ClubGroup } from "@/lib/domain/club-group";
import { currentGroups } from "@/lib/domain/club-grouping";
import { parsePriorityForm } from "@/lib/ingest/parse-priority-form";
import { instantOf } from "../clock";
import { whyNotRecorded } from "../consent/consent-gate";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import type { StudentViewer } from "../gate";
import { loadAcademyRules } from "./student-record";

/** The word under which the form is kept. */
export const PRIORITY_FORM = "priority-form";

/** The kind under which a refused form is kept. */
export function priorityDraft(studentId: string): string {
  return kindOf(PRIORITY_FORM, studentId);
}

interface Chosen {
  readonly kind: "chosen";
  readonly clubGroup: string;
}

/**
 * Puts a fundamental in hand against the order of work, or lets that choose again, once; a refused form is kept. Letting it choose
 * records nothing new of the student, so it is asked for no consent.
 */
export function choosePriorityByCoach(viewer: StudentViewer, data: FormData): Chosen | Refused {
  return submitOnce<Chosen>(viewer, priorityDraft(viewer.student.studentId), data, () => enter(viewer, data));
}

function enter(viewer: StudentViewer, data: FormData): Chosen | Refused {
  const { words, db, student, scope, academy } = viewer;
  const { fundamentals, grouping } = loadAcademyRules(db, scope, academy);
  const parsed = parsePriorityForm(data, {
    fundamentals: fundamentals.map(({ id }) => id),
    clubGroups: currentGroups(grouping).map(({ id }) => id),
  });
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, priorityDraft(student.studentId), data, errors, refusal),
  });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("priority-form.refusal", { problems: Object.keys(errors).length }));
  }
  const { clubGroup, ...chosen } = parsed.value;
  const why = chosen.fundamentalId === null ? null : whyNotRecorded(viewer, student);
  if (why !== null) return refuse({}, why);
  const by = { day: viewer.today, who: viewer.name };
  insertPriority(db, student, { ...chosen, clubGroup: clubGroup as ClubGroup, ...by }, instantOf(academy));
  return { kind: "chosen", clubGroup };
}
