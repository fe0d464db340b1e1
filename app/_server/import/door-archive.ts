import { aliasAnswer } from "@/lib/ingest/plan-archive";
import type { Words } from "@/lib/words/catalogue";
import { sayDifference, sayQuestion, sayRefusal } from "../archive/archive-page";
import type { ReadArchive } from "../worker/file-tasks";

const COUNTED = ["sessions", "swings", "readings", "events"] as const;

/** The preview of an archive as data: the same that the page shows in words. */
export function tellArchive(words: Words, { state, students, aliases, questions, refusals, differences }: ReadArchive) {
  const sums = COUNTED.map((what) => [what, students.reduce((sum, student) => sum + student[what], 0)]);
  return {
    archive: true,
    ready: state === "ready",
    brings: { students: students.length, ...Object.fromEntries(sums) },
    students,
    // Another alias is given as `answer=<id>=<alias>`.
    questions: [
      ...aliases.map(({ studentId, alias, answer }) => ({
        id: aliasAnswer(studentId),
        code: "alias-taken",
        asks: words.say("archive-import.alias", { alias }),
        answer: answer === "" ? null : answer,
      })),
      // One of the options is given as `answer=<id>=<option>`.
      ...questions.map((question) => ({
        id: question.name,
        code: question.code,
        asks: sayQuestion(words, question),
        options: question.options,
        answer: question.options.some(({ value }) => value === question.answer) ? question.answer : null,
      })),
    ],
    refused: refusals.map((note) => ({ ...note, says: sayRefusal(words, note) })),
    differences: differences.map((note) => ({ ...note, says: sayDifference(words, note) })),
  };
}
