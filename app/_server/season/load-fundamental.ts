import { notFound } from "next/navigation";
import { readAssignments } from "@/db/read/drills";
import { readNoiseModels } from "@/db/read/noise-models";
import { readPractice } from "@/db/read/practice";
import { readReadBackReadings } from "@/db/read/read-backs";
import { readCorrections } from "@/db/read/readings";
import { currentGroups } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { PlanSaid } from "@/lib/report/ask-plan-model";
import { buildAskPlan } from "@/lib/report/build-ask-plan";
import { buildFundamentalPage } from "@/lib/report/build-fundamental";
import type { FiguresSource } from "@/lib/report/figures-model";
import type { FundamentalSource } from "@/lib/report/fundamental-source";
import type { FundamentalPage } from "@/lib/report/page-model";
import { type AnsweredPlan, type WishedFilms, wishedPlan } from "@/lib/report/wished-plan";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { POLICY } from "@/lib/verdict/policy";
import { readerErrorInForce } from "@/lib/verdict/reader-error-in-force";
import type { StudentRecord } from "@/lib/verdict/student-record";
import type { TrackHistory } from "@/lib/verdict/track-history";
import { sayClubGroup } from "@/lib/words/say-club";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { answerOnce } from "../analysis/kept-answers";
import { enginesModels } from "../analysis/refit-noise";
import { linkTables } from "../archive/table-links";
import { dayIn } from "../clock";
import type { StudentViewer } from "../gate";
import { loadStudentVerdicts, type StudentVerdicts } from "../roster/load-verdicts";
import { groupNoticesOf } from "../session/group-jumps";
import { chooseClubGroup, clubLinks } from "../settings/club-links";
import type { Judged } from "../worker/tasks";
import { loadCarried } from "./load-carried";
import { loadAcademyRules } from "./student-record";

/**
 * One fundamental of one student; there is no such page where it was never measured.
 *
 * @param wishedFilms films that the page is asked about; null: nobody asks, so that no chance is worked out
 */
export async function loadFundamental(
  viewer: StudentViewer,
  fundamentalId: string,
  wishedClub: string | undefined,
  wishedFilms: WishedFilms | null = null,
): Promise<FundamentalPage> {
  return (await loadFundamentalWhole(viewer, fundamentalId, wishedClub, wishedFilms)).page;
}

/** The same with what it rests on and the student's other tracks, for whoever would else read them again. */
export async function loadFundamentalWhole(
  viewer: StudentViewer,
  fundamentalId: string,
  wishedClub: string | undefined,
  wishedFilms: WishedFilms | null,
): Promise<{
  readonly page: FundamentalPage;
  readonly source: FundamentalSource;
  readonly verdicts: StudentVerdicts;
}> {
  const { source, judged, verdicts } = await loadJudgedSource(viewer, fundamentalId, wishedClub);
  const models = modelsOf(viewer, source);
  const { plan: squarePlan } = await answerOnce({ kind: "square", judged, models });
  const page = buildFundamentalPage(viewer.words, {
    ...source,
    squarePlan,
    reachCurve: await curveOf(judged, models),
    asked: wishedFilms === null ? null : await askedOf(source, judged, models, wishedFilms),
  });
  const { clubGroup, fundamental } = source.history;
  const carried = loadCarried(viewer, { fundamentals: [fundamental], clubGroup, of: { fundamentalId } });
  const which = { student: source.student.id, fundamental: fundamentalId, club: clubGroup };
  return { page: linkTables(viewer.words, "fundamental", which, { ...page, carried }), source, verdicts };
}

function modelsOf(viewer: StudentViewer, source: FundamentalSource): readonly NoiseModel[] {
  return enginesModels(readNoiseModels(viewer.db, viewer.scope, source.history.judged.pool));
}

/** The learning curve behind the dates that are said; null: none are. */
async function curveOf(judged: Judged, models: readonly NoiseModel[]): Promise<FundamentalSource["reachCurve"]> {
  const { reach } = judged.verdict;
  if (reach === null || reach.kind === "unsaid") return null;
  return (await answerOnce({ kind: "curve", judged, models })).curve;
}

/** The films that are asked about, with what they would tell; null: nothing is asked. */
async function askedOf(
  { verdict }: FundamentalSource,
  judged: Judged,
  models: readonly NoiseModel[],
  wished: WishedFilms,
): Promise<AnsweredPlan | null> {
  const plan = wishedPlan(verdict, judged.track, wished);
  if (plan === null) return null;
  const { sessions, swingsEach, care } = plan;
  const asked = { sessions, swingsEach, care: care.care };
  const { answer } = await answerOnce({ kind: "plan", judged, models, plan: asked });
  return answer === null ? null : { plan, answer };
}

/** What one fundamental was judged from, what came of it, and the noise models of its pool. */
export async function loadJudgedTrack(
  viewer: StudentViewer,
  fundamentalId: string,
  wishedClub: string | undefined,
): Promise<{ readonly judged: Judged; readonly models: readonly NoiseModel[] }> {
  const { source, judged } = await loadJudgedSource(viewer, fundamentalId, wishedClub);
  return { judged, models: modelsOf(viewer, source) };
}

/** The figures that a verdict was worked out with: the noise of its looks, and the reader's error at the last. */
function figuresOf(
  viewer: StudentViewer,
  { readerErrors = [] }: StudentRecord,
  fundamental: Fundamental,
  judged: Judged,
): FiguresSource {
  const { track } = judged;
  const named = new Set([...track.sessions.map((session) => session.noiseModel), judged.verdict.noiseModel]);
  const noise = readNoiseModels(viewer.db, viewer.scope, track.pool).filter((model) => named.has(model.name));
  const last = track.sessions.at(-1)?.date;
  const measured = last === undefined ? null : readerErrorInForce(readerErrors, fundamental, last);
  const readerSd = track.readerSd ?? POLICY.readerSd;
  return {
    noise: noise.map(({ name, body, learnedUpTo }) => {
      const { kind, learnedFrom } = JSON.parse(body) as NoiseModel;
      return { name, kind, learnedFrom, learnedUpTo };
    }),
    reader: {
      readerSd,
      offsetSd: track.readerOffsetSd ?? POLICY.readerOffset * readerSd,
      number: measured?.number ?? null,
    },
  };
}

/** What the page rests on, with what the films that somebody asks about would tell. */
export async function loadAskedSource(
  viewer: StudentViewer,
  fundamentalId: string,
  wishedClub: string | undefined,
  wishedFilms: WishedFilms,
): Promise<FundamentalSource> {
  const { source, judged } = await loadJudgedSource(viewer, fundamentalId, wishedClub);
  return { ...source, asked: await askedOf(source, judged, modelsOf(viewer, source), wishedFilms) };
}

/** What films would tell of one fundamental; null: nothing is asked of it. */
export async function loadPlanAnswer(
  viewer: StudentViewer,
  ...asked: [fundamentalId: string, wishedClub: string | undefined, wishedFilms: WishedFilms]
): Promise<PlanSaid | null> {
  return buildAskPlan(viewer.words, await loadAskedSource(viewer, ...asked))?.said ?? null;
}

/** The title of a fundamental's page, for which nothing is judged. */
export function loadFundamentalTitle(viewer: StudentViewer, fundamentalId: string): string {
  const { fundamentals } = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  const fundamental = fundamentals.find((each) => each.id === fundamentalId);
  if (!fundamental) return notFound();
  return viewer.words.say("document-title", { page: sayFundamental(viewer.words, fundamental) });
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
): Promise<{
  readonly source: FundamentalSource;
  readonly judged: Judged;
  readonly verdicts: StudentVerdicts;
}> {
  const { words } = viewer;
  const verdicts = await loadStudentVerdicts(viewer);
  const { record, tracks, grouping } = verdicts;
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
    figures: figuresOf(viewer, record, track.history.fundamental, track.judged),
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
    owningRules: record.owningRules,
    asOf: viewer.today,
    today: viewer.today,
    clubName: sayClubGroup(words, grouping, track.history.clubGroup),
    beside: currentGroups(grouping).flatMap((group) => {
      const other = own.find((each) => each.history.clubGroup === group.id);
      return other
        ? [{ clubName: sayClubGroup(words, grouping, group.id), history: other.history, verdict: other.verdict }]
        : [];
    }),
    otherClubs: clubLinks(words, grouping, own, { clubGroup, path: `/students/${record.student.id}/${fundamentalId}` }),
  };
  return { source, judged: track.judged, verdicts };
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
