import { createHash } from "node:crypto";
import { readOpenings } from "@/db/read/family-links";
import { readPractice } from "@/db/read/practice";
import { readStudent } from "@/db/read/students";
import { readTold } from "@/db/read/told";
import type { ClubGroup } from "@/lib/domain/club-group";
import { fileTextOf, messageOf } from "@/lib/report/build-tell";
import { familyPhoneTip } from "@/lib/report/family-phone-tip";
import { buildFamilyStory } from "@/lib/report/family-story";
import type { ShownDigests, Telling } from "@/lib/report/tell-source";
import type { Words } from "@/lib/words/catalogue";
import { familyWords } from "@/lib/words/family-words";
import { daysHere } from "../clock";
import type { StudentViewer } from "../gate";
import { loadStudentVerdicts, type StudentVerdicts } from "../roster/load-verdicts";
import { loadStudentWork } from "../season/load-work";
import { chooseClubGroup } from "../settings/club-links";
import { familyTask } from "./family-task";
import { loadLook } from "./load-look";
import { firstLogDay, loadStorySource } from "./load-story";

/** What a family is told of a student outside its page, in its own words. */
export interface LoadedTelling {
  /** In which the family is told. */
  readonly words: Words;
  readonly telling: Telling;
  /** Null: the student was never filmed. */
  readonly clubGroup: ClubGroup | null;
}

/** A digest of a text as a page shows it. */
export function shownDigest(text: string): string {
  return createHash("sha256").update(text).digest("hex").slice(0, 32);
}

/** Practice as it may leave the house: nothing of what hurts, nor that something does. */
function practiceOutside({ db, student, today }: StudentViewer) {
  const first = firstLogDay(today);
  return readPractice(db, student)
    .filter(({ voidedAt, day }) => voidedAt === null && day >= first)
    .map((entry) => ({ ...entry, pain: null }));
}

/** The one correction of the phone from the last day on which anything was filmed; empty: there is none. */
function tipOf(words: Words, { record }: StudentVerdicts): string {
  const last = record.sessions.at(-1)?.id;
  const tips = record.captures
    .filter(({ sessionId }) => sessionId === last)
    .map((capture) => familyPhoneTip(words, capture, record.student));
  return tips.find((tip) => tip !== "") ?? "";
}

/** Everything that a family is told of a student, as it may leave the house. */
export async function loadTelling(coach: StudentViewer): Promise<LoadedTelling> {
  const { db, student, today, academy } = coach;
  const words = familyWords(coach.words, readStudent(db, student));
  const viewer = { ...coach, words };
  const verdicts = await loadStudentVerdicts(viewer);
  const { record, tracks, grouping } = verdicts;
  const clubGroup = chooseClubGroup(grouping, tracks, undefined);
  const dayOf = daysHere(academy);
  const openings = readOpenings(db, student).map(({ openedAt }) => dayOf(openedAt));
  const source = loadStorySource(viewer, { verdicts, practice: practiceOutside(viewer), openings });
  const story = buildFamilyStory(words, source);
  const told = readTold(db, student);
  const stopped = loadStudentWork(viewer, clubGroup, "said").work.stop !== null;
  const task = stopped ? null : familyTask(viewer, today);
  const telling: Telling = {
    ...{ student: record.student, today, told },
    story: stopped ? { ...story, task: words.say("family-story.task.pause") } : story,
    stopped: stopped ? "yes" : "no",
    taskLines:
      task === null
        ? []
        : [task.how, task.rest, task.lot, task.cautions, words.say("family.task.missed")].filter((line) => line !== ""),
    filming: stopped ? "" : tipOf(words, verdicts),
    picture: loadLook(viewer, verdicts, story).picture,
    source,
  };
  return { words, telling, clubGroup };
}

/** Digests of the message and the file of a telling, by which a press finds that they have changed since the page was made. */
export function shownDigests({ words, telling }: LoadedTelling): Pick<ShownDigests, "message" | "file"> {
  return {
    message: shownDigest(messageOf(words, telling).text),
    file: shownDigest(fileTextOf(words, telling)),
  };
}
