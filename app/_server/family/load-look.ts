import { readFilmPlans } from "@/db/read/film-plans";
import { buildFamilyLook } from "@/lib/report/build-family-look";
import type { FamilyLook } from "@/lib/report/family-look-model";
import type { LookSource } from "@/lib/report/family-look-source";
import type { FamilyStory } from "@/lib/report/family-story-model";
import { chooseWork } from "@/lib/report/order-of-work";
import { buildTrackSummary } from "@/lib/report/track-summary";
import { planAnswers } from "@/lib/verdict/plan-answers";
import type { StudentViewer } from "../gate";
import { loadSentFilms } from "../plan/sent-films";
import type { StudentVerdicts } from "../roster/load-verdicts";
import { loadStudentWork } from "../season/load-work";
import { chooseClubGroup } from "../settings/club-links";
import { videosOf } from "./videos-of";

/** Where the phone stood in each film of the student, latest first. */
function capturesOf({ record }: StudentVerdicts): LookSource["captures"] {
  const place = new Map([...record.sessions].map(({ id }, at) => [id, at]));
  return [...record.captures].sort((a, b) => (place.get(b.sessionId) ?? 0) - (place.get(a.sessionId) ?? 0));
}

/** What of a family's page is drawn, counted or shown how to do. */
export function loadLook(viewer: StudentViewer, verdicts: StudentVerdicts, story: FamilyStory): FamilyLook {
  const { db, student, today, words } = viewer;
  const { record, grouping } = verdicts;
  const clubGroup = chooseClubGroup(grouping, verdicts.tracks, undefined);
  const tracks = verdicts.tracks.filter(({ history }) => history.clubGroup === clubGroup);
  const ranked = tracks.map(({ history, verdict }) => ({
    fundamental: history.fundamental,
    summary: buildTrackSummary(history, verdict),
  }));
  // Also while work is stopped the picture is of what it will go on with.
  const { work } = loadStudentWork(viewer, clubGroup, "left-out");
  const { inHand } = chooseWork(record.fundamentals, ranked, { ...work, stop: null });
  // With whichever clubs: it is what the family was told last.
  const plans = readFilmPlans(db, student);
  return buildFamilyLook(words, {
    ...{ student: record.student, today, tracks },
    inHand: inHand?.item.fundamental.id ?? null,
    videos: videosOf(verdicts),
    numbers: story.numbers,
    plan: plans.length === 0 ? null : planAnswers(plans, loadSentFilms(viewer, record)).awaited,
    captures: capturesOf(verdicts),
  });
}
