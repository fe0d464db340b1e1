const GUARDED = /^''*[=+\-@\t\r\n\0＝＋－＠]/u;

/**
 * A cell as it was before a download guarded it: one apostrophe before what looks like a formula is taken off. Any other
 * text stays, an apostrophe before a word or a figure too.
 *
 * @param text a cell of a table, taken out of its quotes
 */
export function restoreCell(text: string): string {
  return GUARDED.test(text) ? text.slice(1) : text;
}
