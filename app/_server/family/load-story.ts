import { readAssignments } from "@/db/read/drills";
import { readPractice } from "@/db/read/practice";
import { readTold } from "@/db/read/told";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { buildFamilyStory } from "@/lib/report/family-story";
import type { FamilyStory } from "@/lib/report/family-story-model";
import type { StorySource, StoryTask } from "@/lib/report/family-story-source";
import { planFollowed } from "@/lib/report/plan-followed";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import { decidePlateau } from "@/lib/verdict/plateau";
import { practiceCounter } from "../drill/drill-since";
import type { StudentViewer } from "../gate";
import type { StudentVerdicts } from "../roster/load-verdicts";
import { recentPractice } from "../season/recent-practice";
import { chooseClubGroup } from "../settings/club-links";
import { familyTask } from "./family-task";
import { videosOf } from "./videos-of";

/** What the story is told from beside what is on file of the student. */
export interface StoryReader extends Pick<StorySource, "openings"> {
  readonly verdicts: StudentVerdicts;
  /** As it is read with a proof that pain may be known of, else with none in it. */
  readonly practice: StorySource["practice"];
}

/** The first of the days of practice that a family's page shows. */
export function firstLogDay(today: string): string {
  return dayFromNumber(dayNumber(today) - FAMILY_THRESHOLDS.logDays.value + 1);
}

function storyTask(viewer: StudentViewer, drills: ReturnType<typeof readAssignments>): StoryTask | null {
  const { today } = viewer;
  const task = familyTask(viewer, today);
  const given = drills.find(({ id }) => id === task?.assignmentId);
  if (task === null || given === undefined) return null;
  const { fundamentalId, start, remeasureOn } = given;
  return {
    ...{ drill: task.drill, dose: task.dose, fundamentalId, start, remeasureOn },
    week: practiceCounter(viewer)(given, firstLogDay(today)),
  };
}

/** Everything that a family's story rests on. */
export function loadStorySource(viewer: StudentViewer, { verdicts, practice, openings }: StoryReader): StorySource {
  const { db, student, today } = viewer;
  const { record, tracks, grouping } = verdicts;
  const clubGroup = chooseClubGroup(grouping, tracks, undefined);
  const drills = readAssignments(db, student);
  const logged = readPractice(db, student).filter(({ voidedAt, day }) => voidedAt === null && day <= today);
  const facts = { practice: logged, drills, events: record.events, count: practiceCounter(viewer), today };
  return {
    student: record.student,
    today,
    tracks: tracks
      .filter(({ history }) => history.clubGroup === clubGroup)
      .map(({ history, verdict, asking }) => ({
        history,
        verdict,
        followed: planFollowed(asking, history, verdict),
        plateau: decidePlateau(history, verdict, recentPractice(facts, history.fundamental.id), today),
      })),
    videos: videosOf(verdicts),
    task: storyTask(viewer, drills),
    drills,
    practice,
    events: record.events,
    contact: clubGroup === null ? null : { sessions: record.sessions, clubGroup, seasonStart: record.seasonStart },
    openings,
    told: readTold(db, student).filter((each) => each.clubGroup === clubGroup),
  };
}

/** What a family is told of a student: on its page, in a message, in a file and in a letter. */
export function loadStory(viewer: StudentViewer, reader: StoryReader): FamilyStory {
  return buildFamilyStory(viewer.words, loadStorySource(viewer, reader));
}
