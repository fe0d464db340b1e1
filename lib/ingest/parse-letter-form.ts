import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, choice, collectIssues } from "./form-fields";
import { hasRefusedMarks } from "./text-key";

/** Most letters of a coach's own paragraph: with every sentence it still is one sheet. */
export const OWN_LETTERS = 1200;

/** A letter as its form says it. */
export interface EnteredLetter {
  /** Keys of the sentences in their order. */
  readonly order: readonly string[];
  readonly own: string;
  readonly place: "first" | "last";
}

/** The own paragraph, with the lines that a browser sends as one kind of them. */
function ownText(data: FormData, add: Collect): string {
  const text = fieldText(data, "own").replace(/\r\n?/g, "\n");
  if (text.length > OWN_LETTERS) add("own", "too-long", { limit: OWN_LETTERS });
  else if (hasRefusedMarks(text)) add("own", "hidden-mark");
  return text;
}

/**
 * The form of a season letter: a place for each sentence, and the coach's own paragraph. Sentences of one place stand in the
 * order in which they are offered; an absent field is the place at which its sentence is offered, and an empty one leaves it out.
 *
 * @param offered keys of the sentences, in their order
 */
export function parseLetterForm(data: FormData, offered: readonly string[]): FormOutcome<EnteredLetter> {
  const { issues, add } = collectIssues();
  const places = offered.map((key, at) => {
    const name = `place.${key}`;
    const text = data.has(name) ? fieldText(data, name) : String(at + 1);
    const place = /^\d{1,2}$/.test(text) ? Number(text) : text === "" ? 0 : null;
    if (place === null || place > offered.length) add(name, "not-a-choice");
    return { key, place: place ?? 0 };
  });
  const own = ownText(data, add);
  const place = choice(data, "ownPlace", ["first", "last"] as const, "last", add);
  if (issues.length > 0) return { kind: "issues", issues };
  const order = places
    .filter((each) => each.place > 0)
    .sort((a, b) => a.place - b.place)
    .map(({ key }) => key);
  return { kind: "ok", value: { order, own, place } };
}
