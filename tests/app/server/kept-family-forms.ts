import { loadConsentForm, loadDeparture, loadWithdrawal } from "@/app/_server/consent/load-consent";
import { loadFamilyLinks } from "@/app/_server/family/load-family-links";
import { loadFamilyRequest } from "@/app/_server/family/load-family-request";
import { loadLetter } from "@/app/_server/family/load-letter";
import type { StudentViewer } from "@/app/_server/gate";
import { loadCharges } from "@/app/_server/people/load-charges";
import { loadHanding } from "@/app/_server/people/load-handing";
import { insertFamilyRequest } from "@/db/write/family-links";
import type { FormModel } from "@/lib/report/form-model";
import type { PeoplePage } from "@/lib/report/people-model";
import { PUBLIC, share, stateAddress } from "./family-academy";

/** A consent to share, and something that the family asks for. */
export function fillFamily(viewer: StudentViewer): void {
  share(viewer);
  const asked = { id: "asked-once", linkId: null, kind: "export", askedAt: "2026-01-05T08:00:00.000Z" } as const;
  insertFamilyRequest(viewer.db, viewer.student, asked);
}

function formOn({ parts }: PeoplePage, act: string): FormModel {
  const found = parts.flatMap(({ forms }) => forms).find((each) => each.act === act);
  if (!found) throw new Error(`no form for ${act}`);
  return found.form;
}

/** The forms about a family, consent and whose charge a student is, as their pages load them, and what somebody types into them by half. */
export function familyForms(viewer: () => StudentViewer) {
  return {
    "family-link": {
      load(draft: string): FormModel {
        stateAddress(PUBLIC);
        const page = loadFamilyLinks(viewer(), draft, {});
        stateAddress(null);
        return formOn(page, "make");
      },
      typed: [["label", "moth"]] as const,
    },
    "letter-form": {
      load: async (draft: string): Promise<FormModel> => {
        const { form } = await loadLetter(viewer(), { draft });
        if (form === null) throw new Error("no letter");
        return form;
      },
      typed: [["own", "He is such a hard wor"]] as const,
    },
    "family-answer": {
      load: (draftId: string): FormModel => formOn(loadFamilyRequest(viewer(), "asked-once", { draftId }), "settle"),
      typed: [["answer", "It is on its w"]] as const,
    },
    "consent-form": {
      load: (draftId: string) => loadConsentForm(viewer(), { draftId }),
      typed: [["givenBy", "Moth"]] as const,
    },
    "withdrawal-form": {
      load: (draftId: string) => loadWithdrawal(viewer(), { draftId }).form,
      typed: [["withdrawnBy", "Fa"]] as const,
    },
    "departure-form": {
      load: (draftId: string) => loadDeparture(viewer(), { draftId }).form,
      typed: [["departedOn", "2026-0"]] as const,
    },
    "handing-form": {
      load: (id: string) => formOn(loadHanding(viewer(), id, {}), "hand"),
      typed: [["note", "grip fi"]] as const,
    },
    "charges-form": {
      load: (id: string) => formOn(loadCharges(viewer(), id, {}), "give"),
      typed: [["until", "31 De"]] as const,
    },
  };
}
