import { type Dialect, readTokens, type Token } from "./read-tokens";

/** One place where a file takes something from another. */
export interface Import {
  /** As written; "(computed)" where it is no plain string. */
  readonly from: string;
  /** `type` only where the compiler drops it: `import type` and `export type`. */
  readonly kind: "value" | "type";
  /** Names taken, as the other file calls them; "*" for all, "default" for the default. */
  readonly names: readonly string[];
  readonly line: number;
}

export function scanImports(source: string, dialect: Dialect): Import[] {
  const tokens = readTokens(source, dialect);
  const found: Import[] = [];
  tokens.forEach((token, i) => {
    if (token.kind !== "word" || is(tokens[i - 1], "mark", ".") || is(tokens[i + 1], "mark", ":")) return;
    if (token.text === "import" || token.text === "require") {
      const called = is(tokens[i + 1], "mark", "(");
      if (called) found.push(call(tokens, i));
      else if (token.text === "import" && !is(tokens[i + 1], "mark", ".")) add(statement(tokens, i, "import"));
    } else if (token.text === "export") add(statement(tokens, i, "export"));
  });
  return found;

  function add(one: Import | null): void {
    if (one) found.push(one);
  }
}

function is(token: Token | undefined, kind: Token["kind"], text: string): boolean {
  return token?.kind === kind && token.text === text;
}

function call(tokens: readonly Token[], i: number): Import {
  const target = tokens[i + 2];
  const plain = (target?.kind === "string" || target?.kind === "template") && !is(tokens[i + 3], "mark", "{");
  const line = (tokens[i] as Token).line;
  return { from: plain ? (target as Token).text : "(computed)", kind: "value", names: ["*"], line };
}

function statement(tokens: readonly Token[], i: number, verb: "import" | "export"): Import | null {
  const { line } = tokens[i] as Token;
  const first = tokens[i + 1];
  if (verb === "import" && first?.kind === "string") return { from: first.text, kind: "value", names: [], line };
  let at = i + 1;
  const typed = is(first, "word", "type") && !(is(tokens[i + 2], "word", "from") && tokens[i + 3]?.kind === "string");
  if (typed) at++;
  if (verb === "export" && !is(tokens[at], "mark", "*") && !is(tokens[at], "mark", "{")) return null;
  const names: string[] = [];
  let inBraces = false;
  for (; at < tokens.length; at++) {
    const token = tokens[at] as Token;
    if (token.kind === "string") break;
    if (is(token, "word", "from") && tokens[at + 1]?.kind === "string") {
      return { from: (tokens[at + 1] as Token).text, kind: typed ? "type" : "value", names, line };
    }
    if (is(token, "mark", "{")) inBraces = true;
    else if (is(token, "mark", "}")) {
      inBraces = false;
      if (verb === "export" && !is(tokens[at + 1], "word", "from")) return null;
    } else if (is(token, "mark", "*")) names.push("*");
    else if (is(token, "mark", ";")) return null;
    else if (token.kind === "word" && !is(tokens[at - 1], "word", "as") && token.text !== "as") {
      const prefix =
        token.text === "type" && inBraces && tokens[at + 1]?.kind === "word" && !is(tokens[at + 1], "word", "as");
      if (!prefix) names.push(inBraces ? token.text : "default");
    }
  }
  return null;
}
