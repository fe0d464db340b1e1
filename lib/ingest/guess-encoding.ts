import { analyse } from "chardet";

/** Encodings of one byte a letter that spreadsheets of Europe write; each by the name that Node's decoder knows. */
const SINGLE_BYTE = [
  "windows-1252",
  "windows-1250",
  "iso-8859-2",
  "windows-1254",
  "windows-1251",
  "koi8-r",
  "windows-1253",
  "macintosh",
] as const;

/** Encodings of several bytes a letter, by the guesser's names. */
const MULTI_BYTE: Readonly<Record<string, string>> = {
  Shift_JIS: "shift_jis",
  "EUC-JP": "euc-jp",
  "EUC-KR": "euc-kr",
  Big5: "big5",
  GB18030: "gb18030",
};

/** Of 100; below it the guesser's word on letters of several bytes is chance where a plainer reading makes words. */
const SURE_ENOUGH = 50;
/** Of 100; what the guesser gives every encoding that the bytes allow at all. */
const ALLOWED = 10;
const SAMPLE_BYTES = 400_000;
const SHOWN_WORDS = 6;
/** Different words that are looked at, and letters of one: more tell nothing new. */
const WORD_LIMIT = 20_000;
const LONGEST_WORD = 200;

/** Signs of Windows-1252 at 0x80 to 0x9F. Node's own decoder of that name gives control signs there. */
const WINDOWS_1252 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

/** A way in which a text that is no Unicode can be read. */
export interface EncodingChoice {
  readonly encoding: string;
  /** Words with letters beyond ASCII as they would read. */
  readonly sample: string;
}

export function fromWindows1252(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let start = 0; start < bytes.length; start += 8192) {
    parts.push(String.fromCharCode(...bytes.subarray(start, start + 8192)));
  }
  return parts.join("").replace(/[\u0080-\u009f]/g, (sign) => WINDOWS_1252[sign.charCodeAt(0) - 0x80] ?? sign);
}

/** The text in an encoding; null where a byte has no letter in it. */
export function decodeAs(bytes: Uint8Array, encoding: string): string | null {
  if (encoding === "windows-1252") return fromWindows1252(bytes);
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

const scriptsOf = (word: string): number =>
  [/\p{Script=Latin}/u, /\p{Script=Cyrillic}/u, /\p{Script=Greek}/u].filter((script) => script.test(word)).length;

/** Whether a word could stand in a list: one script, no sign inside, no capital after a small letter, not accents alone. */
function isPlausible(word: string): boolean {
  if (/[\p{Cc}\ufffd\u2320\u2321\u2500-\u259f]/u.test(word) || scriptsOf(word) > 1) return false;
  if (/\p{L}[^\p{L}\p{M}\p{N}'’.\-–_/&+]+\p{L}/u.test(word)) return false;
  if (/\P{ASCII}/u.test(word) && /\p{Ll}\p{Lu}/u.test(word)) return false;
  // A quotation mark that opens behind a letter.
  if (/\p{L}[‘“„‚]/u.test(word)) return false;
  // A sign that is no letter, where letters stand only left of it or only right of it: a letter of another encoding.
  if (/[\p{L}][¢-¿‡†‰¤¦§¨ª¬¯¶¸¹º¼½¾×÷√∏π∫Ω≈]|[¢-©«¬®¯¶¸¹¼½¾×÷‡†√∏π∫≈]\p{Ll}/u.test(word)) return false;
  const letters = word.match(/\p{L}/gu) ?? [];
  return (
    letters.length < 4 ||
    scriptsOf(word) !== 1 ||
    !letters.every((letter) => /\P{ASCII}/u.test(letter) && /\p{Script=Latin}/u.test(letter))
  );
}

function wordsBeyondAscii(text: string): readonly string[] {
  return [...new Set(text.match(/[^\s,;|"()[\]]*\P{ASCII}[^\s,;|"()[\]]*/gu) ?? [])];
}

/** Signs that part words in a table. */
const PARTING = new Set([...'\t\n\r ,;|"()[]'].map((sign) => sign.charCodeAt(0)));

/**
 * The different words of a whole file that hold letters beyond ASCII, one a line, as bytes: all that the reading of a
 * file can differ in, and small however large the file is.
 */
function distinctWords(bytes: Uint8Array): Uint8Array {
  const seen = new Set<string>();
  let [start, beyond] = [0, 0];
  for (let at = 0; at <= bytes.length; at++) {
    const byte = bytes[at];
    if (byte !== undefined && !PARTING.has(byte)) {
      if (byte > 127) beyond++;
      continue;
    }
    if (beyond > 0 && seen.size < WORD_LIMIT)
      seen.add(String.fromCharCode(...bytes.subarray(start, Math.min(at, start + LONGEST_WORD))));
    [start, beyond] = [at + 1, 0];
  }
  const text = [...seen].join("\n");
  return Uint8Array.from({ length: text.length }, (_, at) => text.charCodeAt(at));
}

/**
 * In which encodings a text that is neither UTF-8 nor UTF-16 can be meant: those in which every word reads like a word.
 * Encodings that give the same text count once.
 *
 * @returns the likeliest first; one: it is settled; several: somebody who knows the names has to say
 */
export function guessEncodings(bytes: Uint8Array): readonly EncodingChoice[] {
  const words = distinctWords(bytes);
  const head = bytes.subarray(0, SAMPLE_BYTES);
  const guesses = analyse(head);
  const multi = (least: number): readonly string[] =>
    guesses.flatMap(({ name, confidence }) =>
      confidence >= least && MULTI_BYTE[name] !== undefined ? [MULTI_BYTE[name]] : [],
    );
  const rank = (encoding: string): number =>
    guesses.find(
      ({ name }) => name.toLowerCase() === encoding || (encoding === "windows-1252" && name === "ISO-8859-1"),
    )?.confidence ?? 0;
  const readings: (EncodingChoice & { readonly text: string; readonly good: boolean })[] = [];
  const read = (encoding: string, from: Uint8Array): void => {
    const text = decodeAs(from, encoding);
    if (text === null || readings.some((kept) => kept.text === text)) return;
    const shown = wordsBeyondAscii(text);
    readings.push({
      encoding,
      text,
      sample: shown.slice(0, SHOWN_WORDS).join(", "),
      good: shown.every(isPlausible),
    });
  };
  for (const encoding of SINGLE_BYTE) read(encoding, words);
  for (const encoding of multi(readings.some(({ good }) => good) ? SURE_ENOUGH : ALLOWED)) read(encoding, head);
  const good = readings.filter((reading) => reading.good);
  const left = (good.length > 0 ? good : readings.filter(({ text }) => !/[\u0080-\u009f]/.test(text))).toSorted(
    (a, b) => rank(b.encoding) - rank(a.encoding),
  );
  return (left.length > 0 ? left : readings).map(({ encoding, sample }) => ({ encoding, sample }));
}
