import { insertAsking } from "@/db/write/asking";
import { ASKING_STATES, type TakenPlan } from "@/lib/domain/asking";
import type { FundamentalSource } from "@/lib/report/fundamental-source";
import { planOnOffer } from "@/lib/report/plan-on-offer";
import { currentInstant } from "../clock";
import type { StudentViewer } from "../gate";
import { loadFundamentalSource } from "./load-fundamental";

/** The plan that the page offers now; null: it offers none. */
function offeredPlan({ verdict, history }: FundamentalSource): TakenPlan | null {
  const offered = planOnOffer(verdict);
  if (offered === null) return null;
  const { sessions, swingsEach, captureSd, chance } = offered;
  const after = history.judged.sessions.at(-1)?.date ?? "";
  return { sessions, swingsEach, captureSd, chance, after, ...("size" in offered ? { ifReal: offered.size } : {}) };
}

/**
 * Keeps a decision on a track's question. What isn't on offer any more, because something else was decided or filmed
 * meanwhile, writes nothing: the page shows how it stands.
 *
 * @returns the path of the track's page
 */
export async function decideAsking(viewer: StudentViewer, data: FormData): Promise<string> {
  const textOf = (name: string): string => String(data.get(name) ?? "");
  const source = await loadFundamentalSource(viewer, textOf("fundamentalId"), textOf("clubGroup"));
  const { clubGroup, fundamental } = source.history;
  const state = ASKING_STATES.find((each) => each === textOf("state"));
  const plan = state === "planned" ? offeredPlan(source) : null;
  const isOffered = clubGroup === textOf("clubGroup") && (state !== "planned" || plan !== null);
  if (state !== undefined && isOffered)
    insertAsking(
      viewer.db,
      viewer.student,
      { fundamentalId: fundamental.id, clubGroup, state, day: viewer.today, who: viewer.name, plan },
      currentInstant(),
    );
  return `/students/${viewer.student.studentId}/${fundamental.id}?club=${clubGroup}`;
}
