import { insertAsking } from "@/db/write/asking";
import { ASKING_STATES, type TakenPlan } from "@/lib/domain/asking";
import type { FundamentalSource } from "@/lib/report/fundamental-source";
import { planOnOffer } from "@/lib/report/plan-on-offer";
import { takenPlan } from "@/lib/report/taken-plan";
import { currentInstant } from "../clock";
import type { StudentViewer } from "../gate";
import { loadAskedSource, loadFundamentalSource } from "./load-fundamental";

/** The plan that the page offers now; null: it offers none. */
function offeredPlan({ verdict, history }: FundamentalSource): TakenPlan | null {
  const offered = planOnOffer(verdict);
  if (offered === null) return null;
  const { sessions, swingsEach, captureSd, chance } = offered;
  const after = history.judged.sessions.at(-1)?.date ?? "";
  return { sessions, swingsEach, captureSd, chance, after, ...("size" in offered ? { ifReal: offered.size } : {}) };
}

/** The films that a form asks about, where their chance is worth asking for; null: it isn't, or none were answered. */
function askedPlan({ asked, history }: FundamentalSource): TakenPlan | null {
  const taken = asked ? takenPlan(asked.answer) : null;
  if (!asked || taken === null) return null;
  const { sessions, swingsEach, captureSd } = asked.answer;
  const after = history.judged.sessions.at(-1)?.date ?? "";
  const meant = taken.kind === "if-real" ? { ifReal: taken.size } : {};
  return { sessions, swingsEach, captureSd, chance: taken.chance, after, ...meant };
}

/**
 * Keeps a decision on a track's question. What isn't on offer any more, because something else was decided or filmed
 * meanwhile, writes nothing: the page shows how it stands.
 *
 * @returns the path of the track's page
 */
export async function decideAsking(viewer: StudentViewer, data: FormData): Promise<string> {
  const textOf = (name: string): string => String(data.get(name) ?? "");
  const films = { films: textOf("films"), swings: textOf("swings"), care: textOf("care") };
  const source = data.has("films")
    ? await loadAskedSource(viewer, textOf("fundamentalId"), textOf("clubGroup"), films)
    : await loadFundamentalSource(viewer, textOf("fundamentalId"), textOf("clubGroup"));
  const { clubGroup, fundamental } = source.history;
  const state = ASKING_STATES.find((each) => each === textOf("state"));
  const wished = data.has("films") ? askedPlan : offeredPlan;
  const plan = state === "planned" ? wished(source) : null;
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
