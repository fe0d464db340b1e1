import { randomUUID } from "node:crypto";
import { readConsents, readStudent } from "@/db/read/students";
import { insertConsent, updateConsentWithdrawn, updateDeparted } from "@/db/write/students";
import { withdrawable } from "@/lib/domain/withdrawable";
import type { FormOutcome } from "@/lib/ingest/field-issue";
import { parseConsentForm } from "@/lib/ingest/parse-consent-form";
import { parseDepartureForm } from "@/lib/ingest/parse-departure-form";
import { parseWithdrawalForm } from "@/lib/ingest/parse-withdrawal-form";
import { instantOf } from "../clock";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import type { StudentViewer } from "../gate";

/** The forms about a student's consent among those that are kept. */
export const CONSENT_FORM = "consent-form";
export const WITHDRAWAL_FORM = "withdrawal-form";
export const DEPARTURE_FORM = "departure-form";

interface Saved {
  readonly kind: "saved";
}

/** Reads a form and saves what it says, once; a refused form is kept with what is wrong in it. */
function saveOnce<T>(
  viewer: StudentViewer,
  form: string,
  data: FormData,
  parse: () => FormOutcome<T>,
  save: (value: T) => void,
): Saved | Refused {
  const { words, student } = viewer;
  const kind = kindOf(form, student.studentId);
  return submitOnce<Saved>(viewer, kind, data, () => {
    const parsed = parse();
    if (parsed.kind === "issues") {
      const errors = sayFieldIssues(words, parsed.issues);
      const refusal = words.say("consent.refusal", { problems: Object.keys(errors).length });
      return { kind: "refused", draftId: keepFormDraft(viewer, kind, data, errors, refusal) };
    }
    save(parsed.value);
    return { kind: "saved" };
  });
}

/** Records a consent that was given. */
export function giveConsent(viewer: StudentViewer, data: FormData): Saved | Refused {
  const { db, student, today, academy } = viewer;
  const { birthYear } = readStudent(db, student);
  return saveOnce(
    viewer,
    CONSENT_FORM,
    data,
    () => parseConsentForm(data, { today, birthYear, ownConsentAge: academy.ownConsentAge }),
    (given) => {
      for (const consent of given) insertConsent(db, student, consent, { now: instantOf(academy), newId: randomUUID });
    },
  );
}

/** Takes back every consent of the ticked kinds that hasn't ended, one that is still to begin too. */
export function withdrawConsent(viewer: StudentViewer, data: FormData): Saved | Refused {
  const { db, student, today } = viewer;
  const open = withdrawable(readConsents(db, student), today);
  const offered = [...new Set(open.map(({ kind }) => kind))];
  return saveOnce(
    viewer,
    WITHDRAWAL_FORM,
    data,
    () => parseWithdrawalForm(data, { today, offered }),
    ({ kinds, withdrawnOn, withdrawnBy }) => {
      for (const { id, kind } of open)
        if (kinds.includes(kind)) updateConsentWithdrawn(db, student, { consentId: id, withdrawnOn, withdrawnBy });
    },
  );
}

/** Says on which day the student left, or that the student is here. */
export function saveDeparture(viewer: StudentViewer, data: FormData): Saved | Refused {
  const { db, student, today } = viewer;
  const { birthYear } = readStudent(db, student);
  return saveOnce(
    viewer,
    DEPARTURE_FORM,
    data,
    () => parseDepartureForm(data, { today, birthYear }),
    ({ departedOn }) => updateDeparted(db, student, departedOn),
  );
}
