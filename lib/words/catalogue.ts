import { IntlMessageFormat } from "intl-messageformat";
import { german } from "./german";
import academy from "./messages/en/academy.json";
import analyze from "./messages/en/analyze.json";
import archive from "./messages/en/archive.json";
import brief from "./messages/en/brief.json";
import capture from "./messages/en/capture.json";
import card from "./messages/en/card.json";
import coach from "./messages/en/coach.json";
import commands from "./messages/en/commands.json";
import compare from "./messages/en/compare.json";
import compared from "./messages/en/compared.json";
import consent from "./messages/en/consent.json";
import correct from "./messages/en/correct.json";
import decides from "./messages/en/decides.json";
import definition from "./messages/en/definition.json";
import desk from "./messages/en/desk.json";
import door from "./messages/en/door.json";
import draft from "./messages/en/draft.json";
import drill from "./messages/en/drill.json";
import erase from "./messages/en/erase.json";
import fair from "./messages/en/fair.json";
import family from "./messages/en/family.json";
import familyLog from "./messages/en/family-log.json";
import familyPage from "./messages/en/family-page.json";
import familyStory from "./messages/en/family-story.json";
import fingerprint from "./messages/en/fingerprint.json";
import form from "./messages/en/form.json";
import frame from "./messages/en/frame.json";
import fundamental from "./messages/en/fundamental.json";
import goals from "./messages/en/goals.json";
import grid from "./messages/en/grid.json";
import handing from "./messages/en/handing.json";
import happen from "./messages/en/happen.json";
import importing from "./messages/en/import.json";
import library from "./messages/en/library.json";
import looked from "./messages/en/looked.json";
import mail from "./messages/en/mail.json";
import note from "./messages/en/note.json";
import pain from "./messages/en/pain.json";
import people from "./messages/en/people.json";
import plan from "./messages/en/plan.json";
import privacy from "./messages/en/privacy.json";
import reread from "./messages/en/reread.json";
import review from "./messages/en/review.json";
import roster from "./messages/en/roster.json";
import spread from "./messages/en/spread.json";
import tell from "./messages/en/tell.json";
import work from "./messages/en/work.json";
import { pseudoMessage } from "./pseudo-message";

/** Arguments of a message: finished text, or numbers that choose a plural. */
export type MessageArguments = Readonly<Record<string, string | number>>;

/** Says a message in one language. */
export interface Words {
  readonly locale: string;
  /** The message of a key with its arguments filled in. Throws when nobody wrote that message. */
  say(key: string, args?: MessageArguments): string;
  /** Whether a message of that key was written. */
  has(key: string): boolean;
}

/** Languages that a coach's page can be read in; `en-XA` is the stretched pseudo-language that shows forgotten words. */
export const LOCALES = ["en", "en-XA"] as const;

/** Languages that words are written in: a coach's, and those that a family is told in. */
const WRITTEN = ["en", "en-XA", "de"] as const;

const english: Readonly<Record<string, string>> = {
  ...academy,
  ...analyze,
  ...archive,
  ...brief,
  ...capture,
  ...importing,
  ...library,
  ...card,
  ...coach,
  ...commands,
  ...compared,
  ...correct,
  ...decides,
  ...definition,
  ...desk,
  ...door,
  ...draft,
  ...drill,
  ...fingerprint,
  ...goals,
  ...form,
  ...frame,
  ...fundamental,
  ...grid,
  ...happen,
  ...mail,
  ...note,
  ...people,
  ...plan,
  ...reread,
  ...roster,
  ...spread,
  ...review,
  ...privacy,
  ...pain,
  ...handing,
  ...looked,
  ...fair,
  ...family,
  ...familyStory,
  ...familyPage,
  ...familyLog,
  ...erase,
  ...tell,
  ...compare,
  ...consent,
  ...work,
};
const written = new Map<string, Words>();

/** The words of a language; unknown languages read English, and so does whatever only a coach reads. */
export function wordsFor(locale: string): Words {
  const known = WRITTEN.find((each) => each === locale) ?? "en";
  const kept = written.get(known);
  if (kept) return kept;
  const words = createWords(known);
  written.set(known, words);
  return words;
}

function messageOf(locale: (typeof WRITTEN)[number], key: string): string | undefined {
  if (locale === "de" && Object.hasOwn(german, key)) return german[key];
  return Object.hasOwn(english, key) ? english[key] : undefined;
}

function createWords(locale: (typeof WRITTEN)[number]): Words {
  const formats = new Map<string, IntlMessageFormat>();
  const language = locale === "de" ? "de" : "en";
  return {
    locale,
    has: (key) => Object.hasOwn(english, key),
    say(key, args = {}) {
      let format = formats.get(key);
      if (!format) {
        const message = messageOf(locale, key);
        if (message === undefined) throw new Error(`no message is written for ${key}`);
        format = new IntlMessageFormat(locale === "en-XA" ? pseudoMessage(message) : message, language, undefined, {
          ignoreTag: true,
        });
        formats.set(key, format);
      }
      return String(format.format(args));
    },
  };
}
