import { loadLibraryForm } from "@/app/_server/drill/library-desk";
import { loadDecide } from "@/app/_server/drill/load-decide";
import type { StudentViewer } from "@/app/_server/gate";
import { findAssignment } from "@/app/_server/season/drill-desk";
import { loadDrill, loadDrillForm } from "@/app/_server/season/load-drills";

function open<T>(form: T | null | undefined): T {
  if (form === null || form === undefined) throw new Error("no form");
  return form;
}

/** The forms of a drill as their pages load them, and what somebody types into them by half. */
export function drillForms(made: () => { readonly viewer: StudentViewer; readonly drill: string }) {
  const viewer = () => made().viewer;
  const drill = () => made().drill;
  return {
    "drill-form": {
      load: (draft: string) => loadDrillForm(viewer(), draft, {}),
      typed: [["words", "ten a d"]] as const,
    },
    "library-form": {
      load: (draft: string) => open(loadLibraryForm(viewer(), null, draft)),
      typed: [["how", "on a co"]] as const,
    },
    "library-change": {
      load: (draft: string) => open(loadLibraryForm(viewer(), findAssignment(viewer(), drill())?.drillId ?? "", draft)),
      typed: [
        ["reps", "1o"],
        ["why", "read bet"],
      ] as const,
    },
    "drill-stop": {
      load: async (draft: string) => open((await loadDrill(viewer(), drill(), draft))?.stop),
      typed: [["why", "learn"]] as const,
    },
    "decision-form": {
      load: async (draft: string) => open((await loadDecide(viewer(), drill(), draft))?.form),
      typed: [
        ["decision", "keep"],
        ["why", "half wa"],
      ] as const,
    },
  };
}
