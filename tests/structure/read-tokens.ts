/**
 * What the structure checks need to see of a file: words, strings and marks without the comments, and, in .tsx,
 * where markup begins and which text a reader would see. The compiler in use offers no parser to call.
 */
export interface Token {
  readonly kind:
    | "word"
    | "number"
    | "mark"
    | "string"
    | "template"
    | "pattern"
    | "tag"
    | "tag-end"
    | "text"
    | "attribute"
    | "expression"
    | "expression-end";
  /** Content of a string, name of a tag or attribute; for an expression the attribute that it fills, or "" for a child. */
  readonly text: string;
  readonly line: number;
}

export type Dialect = "script" | "markup";

const WORD = /[\p{L}_$#@][\p{L}\p{N}_$]*/uy;
const NUMBER = /\d[\w.]*/y;
const NAME = /[\w$.:-]+/y;
/** After these words an operand follows, so a slash begins a pattern and a bracket begins markup. */
const BEFORE_OPERAND = new Set(
  "return typeof case in of delete void throw new instanceof await yield default else do".split(" "),
);

export function readTokens(source: string, dialect: Dialect): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  let line = 1;
  let counted = 0;

  function push(kind: Token["kind"], text: string): void {
    for (; counted < at; counted++) if (source[counted] === "\n") line++;
    tokens.push({ kind, text, line });
  }
  function match(pattern: RegExp): string {
    pattern.lastIndex = at;
    return pattern.exec(source)?.[0] ?? "";
  }
  function operandNext(): boolean {
    const last = tokens.at(-1);
    if (!last) return true;
    if (last.kind === "word") return BEFORE_OPERAND.has(last.text);
    return last.kind === "expression" || (last.kind === "mark" && !")]}".includes(last.text));
  }
  function skipSpaceAndComments(): boolean {
    const from = at;
    const space = match(/\s+/y);
    at += space.length;
    if (source.startsWith("//", at)) at += match(/[^\n]*/y).length;
    else if (source.startsWith("/*", at)) {
      const end = source.indexOf("*/", at + 2);
      at = end < 0 ? source.length : end + 2;
    }
    return at > from;
  }
  function quoted(over: "one line" | "lines"): void {
    const quote = source[at];
    let text = "";
    push("string", "");
    for (at++; at < source.length && source[at] !== quote && (over === "lines" || source[at] !== "\n"); at++) {
      if (source[at] === "\\" && over === "one line") at++;
      text += source[at] ?? "";
    }
    at++;
    tokens[tokens.length - 1] = { ...(tokens.at(-1) as Token), text };
  }
  function template(): void {
    let text = "";
    for (at++; at < source.length && source[at] !== "`"; at++) {
      if (source[at] === "\\") at++;
      else if (source.startsWith("${", at)) {
        push("template", text);
        text = "";
        push("mark", "{");
        at += 2;
        code();
        push("mark", "}");
        continue;
      }
      text += source[at] ?? "";
    }
    push("template", text);
    at++;
  }
  function pattern(): void {
    let inSet = false;
    for (at++; at < source.length && source[at] !== "\n" && (inSet || source[at] !== "/"); at++) {
      if (source[at] === "\\") at++;
      else if (source[at] === "[") inSet = true;
      else if (source[at] === "]") inSet = false;
    }
    at++;
    at += match(/[a-z]*/y).length;
    push("pattern", "");
  }
  /** Reads up to the brace that closes what was open before, and leaves it unread. */
  function code(): void {
    let depth = 0;
    while (at < source.length) {
      if (skipSpaceAndComments()) continue;
      const c = source[at] as string;
      if (c === "}" && depth-- === 0) return;
      if (c === "{") depth++;
      const word = match(WORD);
      const number = word ? "" : match(NUMBER);
      if (c === '"' || c === "'") quoted("one line");
      else if (c === "`") template();
      else if (c === "/" && operandNext()) pattern();
      else if (c === "<" && dialect === "markup" && operandNext() && startsMarkup()) element();
      else if (word || number) {
        push(word ? "word" : "number", word || number);
        at += (word || number).length;
      } else {
        push("mark", c);
        at++;
      }
    }
  }
  function startsMarkup(): boolean {
    return /^<[A-Za-z>]/.test(source.slice(at, at + 2)) && !/^<\w+\s*(,|extends\b)/.test(source.slice(at, at + 80));
  }
  function expression(owner: string): void {
    push("expression", owner);
    at++;
    code();
    push("expression-end", owner);
    at++;
  }
  function element(): void {
    at++;
    const name = match(NAME);
    push("tag", name);
    at += name.length;
    while (at < source.length && source[at] !== ">" && !source.startsWith("/>", at)) {
      if (skipSpaceAndComments()) continue;
      const attribute = match(NAME);
      if (source[at] === "{") expression("...");
      else if (attribute) {
        push("attribute", attribute);
        at += attribute.length;
        while (skipSpaceAndComments());
        if (source[at] !== "=") continue;
        at++;
        while (skipSpaceAndComments());
        if (source[at] === "{") expression(attribute);
        else quoted("lines");
      } else at++;
    }
    if (source[at] === "/") at += 2;
    else {
      at++;
      children();
    }
    push("tag-end", name);
  }
  function children(): void {
    while (at < source.length) {
      if (source.startsWith("</", at)) {
        const close = source.indexOf(">", at);
        at = close < 0 ? source.length : close + 1;
        return;
      }
      if (source[at] === "<") element();
      else if (source[at] === "{") expression("");
      else {
        const text = match(/[^<{]+/y);
        push("text", text);
        at += text.length;
      }
    }
  }

  while (at < source.length) {
    code();
    if (at < source.length) {
      push("mark", "}");
      at++;
    }
  }
  return tokens;
}
