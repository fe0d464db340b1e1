import type { Archive } from "@/lib/domain/archive";
import type { Student } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayLeftOut } from "./archive-readme";
import type { ArchiveTable } from "./archive-table";
import type { Link } from "./basic-model";
import { cautionsFor } from "./cautions";
import type { TextPage } from "./form-model";
import { buildPrivacyLinks } from "./privacy-links";

/** The page from which a student's record is taken out. */
export interface TakeOutPage extends TextPage {
  readonly back: Link;
}

/** What the page rests on: the student, the archive that it offers, and its tables. */
export interface TakeOutSource {
  readonly student: Student;
  readonly today: string;
  readonly archive: Archive;
  readonly tables: readonly ArchiveTable[];
  /** Of how many of its students it tells nothing of what hurts. */
  readonly withoutPain: number;
}

const LEFT_OUT = ["films", "pain", "open-draws", "drafts", "viewers", "changes", "told", "others"];

function readingsOf({ students }: Archive): number {
  return students
    .flatMap(({ sessions }) => sessions.flatMap(({ swings }) => swings))
    .reduce((sum, { readings }) => sum + readings.length, 0);
}

/** What is in an archive, what isn't, how to take it, and how to keep it. */
export function buildTakeOut(
  words: Words,
  { student, today, archive, tables, withoutPain }: TakeOutSource,
): TakeOutPage {
  const say = (key: string, args = {}): string => words.say(`take-out.${key}`, args);
  const api = `/api/students/${student.id}/archive`;
  const counts = {
    sessions: archive.students.reduce((sum, { sessions }) => sum + sessions.length, 0),
    readings: readingsOf(archive),
  };
  return {
    title: say("title", { alias: student.alias }),
    lede: say("lede"),
    back: { href: `/students/${student.id}`, label: say("back") },
    parts: [
      {
        margin: say("all.margin"),
        heading: say("all.heading"),
        paragraphs: [say("all.what", counts), say("all.parts", { tables: tables.length }), say("all.again")],
        links: [{ href: api, label: say("all.link") }],
      },
      {
        margin: say("care.margin"),
        heading: say("care.heading"),
        paragraphs: [
          words.say("archive.readme.keep"),
          words.say("archive.readme.rules"),
          say("care.names"),
          ...cautionsFor(words, student, today),
        ],
        links: [],
      },
      {
        margin: say("paper.margin"),
        heading: say("paper.heading"),
        paragraphs: [say("paper.what")],
        links: [{ href: `/students/${student.id}/report`, label: say("paper.link") }],
      },
      {
        margin: say("tables.margin"),
        heading: say("tables.heading"),
        paragraphs: [say("tables.what")],
        links: tables.map(({ name, rows }) => ({
          href: `${api}?table=${name}`,
          label: say("table.link", { name, rows: words.say("archive.readme.rows", { count: rows.length }) }),
        })),
      },
      {
        margin: say("out.margin"),
        heading: say("out.heading"),
        paragraphs: LEFT_OUT.map((key) => sayLeftOut(words, key, withoutPain)),
        links: [],
      },
      {
        margin: say("privacy.margin"),
        heading: words.say("privacy.links"),
        paragraphs: [],
        links: buildPrivacyLinks(words, student.id, "take-out"),
      },
    ],
  };
}
