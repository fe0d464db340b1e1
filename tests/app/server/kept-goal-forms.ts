import { loadFairForm } from "@/app/_server/fair/load-fair-tests";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadGoals } from "@/app/_server/goals/goal-desk";
import { loadOwningForm } from "@/app/_server/goals/owning-desk";
import { addDefinition, loadDefinitionForm } from "@/app/_server/settings/definition-desk";
import { formOf } from "./first-student";
import { OWN_HEEL_FORM } from "./own-heel-form";

function open<T>(form: T | null): T {
  if (form === null) throw new Error("no form");
  return form;
}

/** The id of a fundamental of the academy's own, which it has from the first call on. */
function ownDefinition(viewer: Viewer): string {
  const outcome = addDefinition(viewer, formOf(OWN_HEEL_FORM));
  return outcome.kind === "kept" ? outcome.id : "own-heel-lift";
}

/** The forms of goal bands, of the owning rule and of a test by the lot, as their pages load them, and what somebody types into them by half. */
export function goalForms(viewer: () => StudentViewer) {
  const asDirector = (): Viewer => {
    const { student: _, ...director } = viewer();
    return director;
  };
  return {
    "goal-form": {
      load: async (draft: string) => (await loadGoals(viewer(), { draft, fundamental: "hinge" })).form,
      typed: [
        ["low", "8o"],
        ["reason", "wide wr"],
      ] as const,
    },
    "academy-goal-form": {
      load: async (draft: string) => (await loadGoals(asDirector(), { draft, fundamental: "hinge" })).form,
      typed: [
        ["reach", "age-range"],
        ["ageTo", "1"],
      ] as const,
    },
    "definition-form": {
      load: (draft: string) => open(loadDefinitionForm(asDirector(), null, draft)),
      typed: [
        ["reading", "1,"],
        ["how", "heel ag"],
      ] as const,
    },
    "definition-change": {
      load: (draft: string) => open(loadDefinitionForm(asDirector(), ownDefinition(asDirector()), draft)),
      typed: [["why", "clea"]] as const,
    },
    "fair-form": {
      load: (draft: string) => loadFairForm(asDirector(), draft),
      typed: [
        ["least", "2."],
        ["days", "4"],
      ] as const,
    },
    "owning-form": {
      load: (draft: string) => loadOwningForm(asDirector(), draft),
      typed: [
        ["sessions", "4 or"],
        ["why", "half a re"],
      ] as const,
    },
  };
}
