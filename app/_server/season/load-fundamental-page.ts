import { buildDoNext } from "@/lib/report/build-do-next";
import { chooseWork } from "@/lib/report/order-of-work";
import type { FundamentalPage } from "@/lib/report/page-model";
import { buildTrackSummary } from "@/lib/report/track-summary";
import type { WishedFilms } from "@/lib/report/wished-plan";
import type { StudentViewer } from "../gate";
import { loadFundamentalWhole } from "./load-fundamental";
import { loadStudentWork } from "./load-work";

/**
 * One fundamental as its page shows it: with the next act, as the order of work of the season's page has it with the same clubs;
 * whoever may know what hurts is told there. What else is made of it, a report, a table or a file, says nothing of it.
 *
 * @param wishedFilms films that the page is asked about; null: nobody asks
 */
export async function loadFundamentalPage(
  viewer: StudentViewer,
  fundamentalId: string,
  wishedClub: string | undefined,
  wishedFilms: WishedFilms | null = null,
): Promise<FundamentalPage> {
  const { page, source, verdicts } = await loadFundamentalWhole(viewer, fundamentalId, wishedClub, wishedFilms);
  const { record, tracks } = verdicts;
  const { clubGroup } = source.history;
  const ranked = tracks
    .filter(({ history }) => history.clubGroup === clubGroup)
    .map(({ history, verdict }) => ({
      fundamental: history.fundamental,
      summary: buildTrackSummary(history, verdict),
    }));
  const { work } = loadStudentWork(viewer, clubGroup, "said");
  return { ...page, next: buildDoNext(viewer.words, source, chooseWork(record.fundamentals, ranked, work)) };
}
