import { LANGUAGES, type Language } from "@/lib/domain/language";
import type { Words } from "@/lib/words/catalogue";
import { langOf } from "@/lib/words/family-words";
import { buildFamilyFile, familyFileText } from "./build-family-file";
import { copyText } from "./build-plan";
import { buildTellMessage, MESSAGE_LETTERS, type TellMessage } from "./tell-message";
import type { TellPage, TellPart } from "./tell-model";
import { correctionsIn } from "./tell-pieces";
import type { ShownDigests, Telling } from "./tell-source";
import { buildToldList } from "./told-list";

/** What the page rests on beside what is told. */
export interface TellPageSource {
  /** In which the family is told. */
  readonly family: Words;
  readonly telling: Telling;
  /** Whether consent to share is in force; without it nothing leaves the house. */
  readonly share: "given" | "missing";
  /** Digests of what the page shows. */
  readonly shown: Pick<ShownDigests, "message" | "file">;
  /** What was just done, a word of `tell.done.…`; null: nothing. */
  readonly done: string | null;
  readonly dayOf: (instant: string) => string;
}

/** The message of a telling. */
export function messageOf(words: Words, telling: Telling): TellMessage {
  const { student, story, filming } = telling;
  const { good, changed, unsure, task, contact } = story;
  return buildTellMessage({
    ...{ alias: student.alias, good, changed, unsure, task, contact, filming },
    pain: words.say("family.pain.child"),
    corrections: correctionsIn(words, telling),
  });
}

/** Every word of the file of a telling. */
export function fileTextOf(words: Words, telling: Telling): string {
  return familyFileText(buildFamilyFile(words, telling));
}

/** Why nothing leaves the house, with the way to what would let it. */
export function refusedPart(words: Words, studentId: string): TellPart {
  return {
    margin: words.say("tell.margin.refused"),
    heading: words.say("tell.refused.heading"),
    lines: [words.say("tell.refused")],
    links: [{ href: `/students/${studentId}/consent`, label: words.say("tell.refused.link") }],
  };
}

function languagePart(words: Words, { id, language = "en" }: Telling["student"]): TellPage["language"] {
  const name = (each: Language): string => words.say(`language.${each}`);
  return {
    margin: words.say("tell.margin.language"),
    heading: words.say("tell.language.heading", { language: name(language) }),
    lines: [words.say("tell.language.explains")],
    links: [],
    presses: LANGUAGES.filter((each) => each !== language).map((each) => ({
      label: words.say("tell.language.choose", { language: name(each) }),
      hidden: { studentId: id, language: each },
    })),
  };
}

function messagePart(words: Words, source: TellPageSource): NonNullable<TellPage["message"]> {
  const { telling, shown, family } = source;
  const { text, leftOut } = messageOf(family, telling);
  const what = leftOut.map((each) => words.say(`tell.message.left.${each}`)).join(", ");
  return {
    margin: words.say("tell.margin.message"),
    explains: words.say("tell.message.explains"),
    note: leftOut.length === 0 ? "" : words.say("tell.message.short", { limit: MESSAGE_LETTERS, what }),
    message: { ...copyText(words, text, family), label: words.say("tell.message.label", { letters: text.length }) },
    keep: {
      label: words.say("tell.keep.message"),
      hidden: { studentId: telling.student.id, kind: "message", shown: shown.message },
    },
  };
}

function filePart(words: Words, source: TellPageSource): NonNullable<TellPage["file"]> {
  const { telling, shown } = source;
  const studentId = telling.student.id;
  return {
    margin: words.say("tell.margin.file"),
    heading: words.say("tell.file.save"),
    lines: [words.say("tell.file.explains"), words.say("tell.file.sent")],
    links: [],
    download: { href: `/api/students/${studentId}/tell/file`, label: words.say("tell.file.link") },
    keep: {
      label: words.say("tell.keep.file"),
      hidden: { studentId, kind: "file", shown: shown.file },
    },
  };
}

/** The page on which a coach tells the family: a message, a file, a letter, and what was told before. */
export function buildTellPage(words: Words, source: TellPageSource): TellPage {
  const { telling, share, done } = source;
  const { student, told } = telling;
  const may = share === "given";
  const at = (page: string): string => `/students/${student.id}/${page}`;
  const notice = `tell.done.${done ?? ""}`;
  return {
    documentTitle: words.say("document-title", { page: words.say("tell") }),
    title: words.say("tell.title", { alias: student.alias }),
    lede: words.say("tell.lede"),
    back: { href: `/students/${student.id}`, label: words.say("tell.back", { alias: student.alias }) },
    notices: words.has(notice) ? [words.say(notice)] : [],
    refused: may ? null : refusedPart(words, student.id),
    language: languagePart(words, student),
    message: may ? messagePart(words, source) : null,
    file: may ? filePart(words, source) : null,
    letter: may
      ? {
          margin: words.say("tell.margin.letter"),
          heading: words.say("tell.letter.heading"),
          lines: [words.say("tell.letter.explains")],
          links: [{ href: at("tell/letter"), label: words.say("tell.letter.link") }],
        }
      : null,
    told: buildToldList(words, told, { studentId: student.id, lang: langOf(source.family), dayOf: source.dayOf }),
    more: {
      margin: words.say("tell.margin.more"),
      heading: words.say("tell.more.heading"),
      lines: [words.say("tell.more.explains")],
      links: [
        { href: at("family"), label: words.say("privacy.link.family") },
        { href: at("plan"), label: words.say("plan") },
        { href: at("report"), label: words.say("tell.more.report") },
      ],
    },
  };
}
