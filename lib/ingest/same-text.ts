/** So many texts are known at one time; a column of measured values holds some hundred. */
const MOST_TEXTS = 20_000;

/**
 * Gives equal texts as one and the same, so that a column that says one thing a hundred thousand times holds it once. Beyond
 * 20,000 different ones it gives the rest as they are.
 */
export class SameText {
  readonly #known = new Map<string, string>();

  text(text: string): string {
    const known = this.#known.get(text);
    if (known !== undefined) return known;
    if (this.#known.size < MOST_TEXTS) this.#known.set(text, text);
    return text;
  }
}
