/** Marks that are not seen but turn or split a text: direction marks and overrides, zero-width spaces, byte order marks. */
const HIDDEN = /[\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/g;

/** Marks that a text may not hold because they show it otherwise than it is, or show nothing at all. */
const REFUSED = /[\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff\ufffd]|(?![\t\n])\p{Cc}/u;

/** A text without marks that can't be seen. */
export function withoutHiddenMarks(text: string): string {
  return text.replace(HIDDEN, "");
}

/** Whether a text holds marks that would be stored unseen or scramble what is shown. */
export function hasRefusedMarks(text: string): boolean {
  return REFUSED.test(text);
}

/** A word as it is compared: composed, lower case, hyphens, points and underscores as single blanks. */
export function wordKey(text: string): string {
  return withoutHiddenMarks(text)
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[\s_\-–.,:/]+/g, " ")
    .trim();
}

/** A name as it is compared: composed, lower case, single blanks, nothing unseen. */
export function nameKey(text: string): string {
  return withoutHiddenMarks(text)
    .normalize("NFC")
    .replace(/[\u200c\u200d]/g, "")
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
}

/** A text as a refusal shows it: cut to 80 signs, unseen marks named by their number. */
export function shownValue(text: string): string {
  const letters = Array.from(text.slice(0, 400));
  const shown = letters
    .slice(0, 80)
    .map((letter) => {
      if (letter === "\n") return "⏎";
      if (letter === "\t") return "⇥";
      return REFUSED.test(letter)
        ? `‹U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}›`
        : letter;
    })
    .join("");
  return letters.length > 80 ? `${shown}…` : shown;
}

/** Rows as a short text, runs drawn together: `14, 31–35, 52`; beyond so many runs `…`. */
export function rowRanges(rows: readonly number[], limit = Number.POSITIVE_INFINITY): string {
  const parts: string[] = [];
  for (let at = 0; at < rows.length; ) {
    if (parts.length >= limit) {
      parts.push("…");
      break;
    }
    let end = at;
    while (end + 1 < rows.length && rows[end + 1] === (rows[end] ?? 0) + 1) end++;
    parts.push(end === at ? `${rows[at]}` : `${rows[at]}–${rows[end]}`);
    at = end + 1;
  }
  return parts.join(", ");
}

/** A word as part of a question's id: safe in a form name, distinct words stay distinct. */
export function questionKey(key: string): string {
  return key.replace(/[^\p{L}\p{N}]/gu, (sign) => `~${(sign.codePointAt(0) ?? 0).toString(16)}.`);
}

/** An id as a message argument: letters only, so that a message can choose by it. */
export function argumentWord(id: string): string {
  return id.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
}
