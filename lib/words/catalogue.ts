import { IntlMessageFormat } from "intl-messageformat";
import analyze from "./messages/en/analyze.json";
import archive from "./messages/en/archive.json";
import capture from "./messages/en/capture.json";
import card from "./messages/en/card.json";
import coach from "./messages/en/coach.json";
import commands from "./messages/en/commands.json";
import correct from "./messages/en/correct.json";
import decides from "./messages/en/decides.json";
import desk from "./messages/en/desk.json";
import door from "./messages/en/door.json";
import draft from "./messages/en/draft.json";
import fingerprint from "./messages/en/fingerprint.json";
import form from "./messages/en/form.json";
import frame from "./messages/en/frame.json";
import grid from "./messages/en/grid.json";
import happen from "./messages/en/happen.json";
import importing from "./messages/en/import.json";
import note from "./messages/en/note.json";
import people from "./messages/en/people.json";
import reread from "./messages/en/reread.json";
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

/** Languages that a page can be read in; `en-XA` is the stretched pseudo-language that shows forgotten words. */
export const LOCALES = ["en", "en-XA"] as const;

const messages: Readonly<Record<string, string>> = {
  ...analyze,
  ...archive,
  ...capture,
  ...importing,
  ...card,
  ...coach,
  ...commands,
  ...correct,
  ...decides,
  ...desk,
  ...door,
  ...draft,
  ...fingerprint,
  ...form,
  ...frame,
  ...grid,
  ...happen,
  ...note,
  ...people,
  ...reread,
};
const written = new Map<string, Words>();

/** The words of a language; unknown languages read English. */
export function wordsFor(locale: string): Words {
  const known = (LOCALES as readonly string[]).includes(locale) ? locale : "en";
  const kept = written.get(known);
  if (kept) return kept;
  const words = createWords(known);
  written.set(known, words);
  return words;
}

function createWords(locale: string): Words {
  const formats = new Map<string, IntlMessageFormat>();
  return {
    locale,
    has: (key) => Object.hasOwn(messages, key),
    say(key, args = {}) {
      let format = formats.get(key);
      if (!format) {
        const message = Object.hasOwn(messages, key) ? messages[key] : undefined;
        if (message === undefined) throw new Error(`no message is written for ${key}`);
        format = new IntlMessageFormat(locale === "en-XA" ? pseudoMessage(message) : message, "en", undefined, {
          ignoreTag: true,
        });
        formats.set(key, format);
      }
      return String(format.format(args));
    },
  };
}
