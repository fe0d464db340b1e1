import { readTokens, type Token } from "./read-tokens";

/** Attributes whose value a person reads or hears. */
const HEARD = ["aria-label", "title", "placeholder", "alt"];
/** What may stand before a string that is itself the value of an expression. */
const BEFORE_VALUE = ["?", ":", "&", "|", "(", "{", "}"];

const LETTER = /\p{L}/u;
const ENTITY = /&#?\w+;/g;

/**
 * Literal words that a user would read, each with its line: text between tags, and strings in attributes
 * that are read or heard; also those chosen by a condition inside braces.
 */
export function userWords(source: string): { readonly line: number; readonly text: string }[] {
  const tokens = readTokens(source, "markup");
  const found: { line: number; text: string }[] = [];
  const open: Inside[] = [];
  tokens.forEach((token, i) => {
    const inside = open.at(-1);
    if (token.kind === "expression") open.push({ owner: token.text, brackets: [] });
    else if (token.kind === "expression-end") open.pop();
    else if (token.kind === "text") note(token);
    else if (token.kind === "string" || token.kind === "template") {
      const before = tokens[i - 1];
      const attribute = before?.kind === "attribute" && HEARD.includes(before.text);
      if (attribute || (inside && reads(inside, before, tokens[i + 1]))) note(token);
    } else if (inside && token.kind === "mark") {
      if ("({[".includes(token.text)) inside.brackets.push(hides(token, tokens[i - 1]));
      else if (")]}".includes(token.text)) inside.brackets.pop();
    }
  });
  return found;

  function note(token: Token): void {
    if (LETTER.test(token.text.replace(ENTITY, ""))) found.push({ line: token.line, text: token.text.trim() });
  }
}

/** Titles and descriptions of a page that are written into it. */
export function titleWords(source: string): { readonly line: number; readonly text: string }[] {
  const tokens = readTokens(source, "markup");
  return tokens
    .filter((token, i) => {
      const key = tokens[i - 2];
      const keyed = (key?.text === "title" || key?.text === "description") && tokens[i - 1]?.text === ":";
      return keyed && (token.kind === "string" || token.kind === "template") && LETTER.test(token.text);
    })
    .map(({ line, text }) => ({ line, text }));
}

/** An expression in braces: what it fills, and for each bracket open in it whether that keeps its strings from the reader. */
interface Inside {
  readonly owner: string;
  readonly brackets: boolean[];
}

function reads(inside: Inside, before: Token | undefined, after: Token | undefined): boolean {
  if (inside.brackets.includes(true) || !(inside.owner === "" || HEARD.includes(inside.owner))) return false;
  if (after?.kind === "mark" && "=!".includes(after.text)) return false;
  return before?.kind === "expression" || (before?.kind === "mark" && BEFORE_VALUE.includes(before.text));
}

/**
 * Arguments of a call (such as keys of messages), objects, lists and bodies of functions aren't read; groups of a
 * condition and the holes of a template are.
 */
function hides(token: Token, before: Token | undefined): boolean {
  if (token.text === "(") return before?.kind === "word" || (before?.kind === "mark" && ")]>".includes(before.text));
  return !(token.text === "{" && before?.kind === "template");
}
