import { notFound } from "next/navigation";
import { readAssignments } from "@/db/read/drills";
import { readNoiseModels } from "@/db/read/noise-models";
import { readPractice } from "@/db/read/practice";
import { readReadBackReadings } from "@/db/read/read-backs";
import { readCorrections } from "@/db/read/readings";
import { buildFundamentalPage } from "@/lib/report/build-fundamental";
import type { FundamentalSource } from "@/lib/report/fundamental-source";
import type { FundamentalPage } from "@/lib/report/page-model";
import type { TrackHistory } from "@/lib/verdict/track-history";
import { sayClubGroup } from "@/lib/words/say-club";
import { workOn } from "../analysis/analysis-worker";
import { enginesModels } from "../analysis/refit-noise";
import { linkTables } from "../archive/table-links";
import { dayIn } from "../clock";
import type { StudentViewer } from "../gate";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { groupNoticesOf } from "../session/group-jumps";
import { chooseClubGroup, clubLinks } from "../settings/club-links";
import type { Judged } from "../worker/tasks";

/** One fundamental of one student; there is no such page where it was never measured. */
export async function loadFundamental(
  viewer: StudentViewer,
  fundamentalId: string,
  wishedClub: string | undefined,
): Promise<FundamentalPage> {
  const { source, judged } = await loadJudgedSource(viewer, fundamentalId, wishedClub);
  const models = enginesModels(readNoiseModels(viewer.db, viewer.scope, source.history.judged.pool));
  const answer = await workOn({ kind: "square", judged, models });
  if (answer.kind !== "square") throw new Error("the analysis worker answered another question");
  const page = buildFundamentalPage(viewer.words, { ...source, squarePlan: answer.plan });
  const which = { student: source.student.id, fundamental: fundamentalId, club: source.history.clubGroup };
  return linkTables(viewer.words, "fundamental", which, page);
}

/** What the page and the downloads of one fundamental rest on. */
export async function loadFundamentalSource(
  viewer: StudentViewer,
  fundamentalId: string,
  wishedClub: string | undefined,
): Promise<FundamentalSource> {
  return (await loadJudgedSource(viewer, fundamentalId, wishedClub)).source;
}

async function loadJudgedSource(
  viewer: StudentViewer,
  fundamentalId: string,
  wishedClub: string | undefined,
): Promise<{ readonly source: FundamentalSource; readonly judged: Judged }> {
  const { words } = viewer;
  const { record, tracks, grouping } = await loadStudentVerdicts(viewer);
  const own = tracks.filter((track) => track.history.fundamental.id === fundamentalId);
  const clubGroup = chooseClubGroup(grouping, own, wishedClub);
  const track = own.find((each) => each.history.clubGroup === clubGroup);
  if (!track) notFound();
  const sessions = new Map(record.sessions.map((session) => [session.id, session]));
  const source: FundamentalSource = {
    student: record.student,
    history: track.history,
    verdict: track.verdict,
    squarePlan: null,
    asking: track.asking,
    drills: readAssignments(viewer.db, viewer.student),
    events: record.events,
    practice: readPractice(viewer.db, viewer.student),
    notMeasurable: record.readings.flatMap((reading) => {
      const session = sessions.get(reading.sessionId);
      if (reading.fundamentalId !== fundamentalId || reading.value !== null || session?.clubGroup !== clubGroup)
        return [];
      return [{ day: session.day, swing: reading.swing }];
    }),
    readBack: readBackOf(viewer, track.history),
    corrections: readCorrections(viewer.db, viewer.student).flatMap((correction) => {
      const session = sessions.get(correction.sessionId);
      if (correction.fundamentalId !== fundamentalId || session?.clubGroup !== clubGroup) return [];
      const { swing, before, after, who, why, correctedAt } = correction;
      const said = ({ kind, typed }: typeof after): string =>
        kind === "void" ? words.say("correct.taken-out") : typed;
      return [{ day: session.day, swing, from: said(before), to: said(after), who, why, at: correctedAt }];
    }),
    groupNotices: groupNoticesOf(
      viewer,
      track.history.sessions.map((entry) => entry.session),
      track.history.fundamental.view,
    ),
    asOf: viewer.today,
    today: viewer.today,
    clubName: sayClubGroup(words, grouping, track.history.clubGroup),
    otherClubs: clubLinks(words, grouping, own, { clubGroup, path: `/students/${record.student.id}/${fundamentalId}` }),
  };
  return { source, judged: track.judged };
}

/** Which readings of a track came of a read-back, with the day of reading; of a derived one those of its parts. */
function readBackOf(viewer: StudentViewer, history: TrackHistory): NonNullable<FundamentalSource["readBack"]> {
  const own = new Set<string>(history.fundamental.derivedFrom ?? [history.fundamental.id]);
  const sessions = new Set(history.sessions.map((entry) => entry.session.id));
  return readReadBackReadings(viewer.db, viewer.student)
    .filter((each) => own.has(each.fundamentalId) && sessions.has(each.sessionId))
    .map(({ sessionId, swing, readAt }) => ({
      ...{ sessionId, swing, readOn: dayIn(viewer.academy.zone, new Date(readAt)) },
    }));
}
