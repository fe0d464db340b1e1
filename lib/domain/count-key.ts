/** Whose count a coding says: of one phrase of one session's note, or of a phrase with a number word in every note. */
export type CountKey =
  | { readonly scope: "note"; readonly sessionId: string; readonly place: string }
  | { readonly scope: "academy"; readonly words: string };

/**
 * The key under which the coding of a count is recorded. A phrase in the form in which phrases are compared begins with a
 * letter, a figure or `#`, so that no phrase is taken for a key.
 */
export function countKey(key: CountKey): string {
  return key.scope === "note" ? `@${encodeURIComponent(key.sessionId)} ${key.place}` : `~${key.words}`;
}

/**
 * A key as it was recorded.
 *
 * @returns null where it is a phrase and no key
 */
export function readCountKey(text: string): CountKey | null {
  if (text.startsWith("~")) return { scope: "academy", words: text.slice(1) };
  const [, sessionId, place] = /^@(\S+) (.+)$/s.exec(text) ?? [];
  if (sessionId === undefined || place === undefined) return null;
  try {
    return { scope: "note", sessionId: decodeURIComponent(sessionId), place };
  } catch {
    return null;
  }
}
