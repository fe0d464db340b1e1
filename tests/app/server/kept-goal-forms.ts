import { loadFairForm } from "@/app/_server/fair/load-fair-tests";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadGoals } from "@/app/_server/goals/goal-desk";
import { loadOwningForm } from "@/app/_server/goals/owning-desk";

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
