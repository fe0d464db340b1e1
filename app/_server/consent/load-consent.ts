import { notFound } from "next/navigation";
import { readConsents, readStudent } from "@/db/read/students";
import { withdrawable } from "@/lib/domain/withdrawable";
import { buildConsentPage, type ConsentPage } from "@/lib/report/build-consent";
import type { FormModel } from "@/lib/report/form-model";
import type { Link } from "@/lib/report/page-model";
import { linkTables } from "../archive/table-links";
import { daysHere } from "../clock";
import { kindOf } from "../draft/draft-forms";
import { type FormDraft, findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import { CONSENT_FORM, DEPARTURE_FORM, WITHDRAWAL_FORM } from "./consent-desk";
import { buildConsentForm, buildDepartureForm, buildWithdrawalForm } from "./consent-form";
import { askedToday } from "./consent-gate";

/** The page of a student's consent. */
export function loadConsent(viewer: StudentViewer): ConsentPage {
  const { words, db, student, today, academy } = viewer;
  const page = buildConsentPage(words, {
    student: readStudent(db, student),
    consents: readConsents(db, student),
    today,
    academy,
    dayOf: daysHere(viewer.academy),
  });
  return linkTables(words, "consent", { student: student.studentId }, page);
}

interface AskedDraft {
  readonly draftId: string;
  readonly dropped?: string;
}

function kept(
  viewer: StudentViewer,
  form: string,
  { draftId, dropped }: AskedDraft,
  build: (draft: FormDraft | null) => FormModel,
): FormModel {
  const { studentId } = viewer.student;
  const draft = findFormDraft(viewer, kindOf(form, studentId), draftId);
  return withKeep(viewer, build(draft), { form, studentId, draftId, dropped });
}

/** The form by which a consent is given. */
export function loadConsentForm(viewer: StudentViewer, asked: AskedDraft): FormModel {
  const { words, db, student } = viewer;
  return kept(viewer, CONSENT_FORM, asked, (draft) =>
    buildConsentForm(words, draft, readConsents(db, student), askedToday(viewer, readStudent(db, student))),
  );
}

/** A form on a page of its own, with the way back to the page of the consent. */
export interface ConsentRoom {
  readonly form: FormModel;
  readonly back: Link;
}

function roomOf({ words, student }: StudentViewer, form: FormModel): ConsentRoom {
  return { form, back: { href: `/students/${student.studentId}/consent`, label: words.say("consent.back") } };
}

/** The form by which a consent is taken back; where there is none to take back, there is no such page. */
export function loadWithdrawal(viewer: StudentViewer, asked: AskedDraft): ConsentRoom {
  const { words, db, student, today } = viewer;
  const kinds = [...new Set(withdrawable(readConsents(db, student), today).map(({ kind }) => kind))];
  if (kinds.length === 0) notFound();
  const { alias } = readStudent(db, student);
  const form = kept(viewer, WITHDRAWAL_FORM, asked, (draft) =>
    buildWithdrawalForm(words, draft, { alias, kinds, today }),
  );
  return roomOf(viewer, form);
}

/** The form that says on which day a student left. */
export function loadDeparture(viewer: StudentViewer, asked: AskedDraft): ConsentRoom {
  const { words, db, student, today, academy } = viewer;
  const { alias, departedOn } = readStudent(db, student);
  const form = kept(viewer, DEPARTURE_FORM, asked, (draft) =>
    buildDepartureForm(words, draft, { alias, departedOn, today, months: academy.keepMonths }),
  );
  return roomOf(viewer, form);
}
