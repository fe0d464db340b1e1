import { type Dialect, readTokens, type Token } from "./read-tokens";
import { scanImports } from "./scan-imports";

/** Words that tell what sport and whose measurement it is. */
const TRADE_WORDS = /golf|swing|club|grip|hinge|tilt|sway|camera|phone|film|student|coach|drill/gi;

/** Runs of words and marks by which pure code would reach the clock, chance, the environment or the console. */
const OUTSIDE = [
  "Date . now",
  "new Date ( )",
  "new Date ;",
  "Math . random",
  "Temporal . Now",
  "import . meta . env",
  "resolvedOptions ( ) . timeZone",
];
/** Globals that are outside whatever is asked of them. */
const OUTSIDE_GLOBALS = [
  "performance",
  "crypto",
  "process",
  "console",
  "setTimeout",
  "setInterval",
  "setImmediate",
  "globalThis",
];

export function tradeWords(source: string): string[] {
  return [...source.matchAll(TRADE_WORDS)].map((one) => one[0]);
}

/** Where pure code reaches for the clock, for chance, for the environment or for the console. */
export function outsideReaches(source: string): string[] {
  const tokens = readTokens(source, "script");
  const runs = OUTSIDE.filter((run) => holdsRun(tokens, run));
  const globals = tokens.filter((token, i) => {
    const next = tokens[i + 1];
    const member = isMark(tokens[i - 1], ".") && !isMark(tokens[i - 2], ".");
    return (
      token.kind === "word" &&
      OUTSIDE_GLOBALS.includes(token.text) &&
      !member &&
      isMark(next, token.text.startsWith("set") ? "(" : ".")
    );
  });
  const called = tokens.filter(
    (token, i) => isWord(token, "Date") && isMark(tokens[i + 1], "(") && !isWord(tokens[i - 1], "new"),
  );
  return [...runs, ...globals.map((token) => token.text), ...called.map(() => "Date ( )")];
}

/** What only the gate may mint. */
const PROVEN = ["StudentScope", "PainScope"];

/** Lines where a scope is claimed instead of proved: casts, predicates, renamed imports. */
export function scopeClaims(source: string, dialect: Dialect): number[] {
  const tokens = readTokens(source, dialect);
  const lines: number[] = [];
  tokens.forEach((token, i) => {
    if (!PROVEN.some((name) => isWord(token, name))) return;
    let start = i;
    while (continuesType(tokens, start - 1)) start--;
    const claimed = isWord(tokens[start - 1], "as") || isWord(tokens[start - 1], "is");
    const inFront = tokens[i - 2];
    const asserted =
      isMark(tokens[i - 1], "<") &&
      isMark(tokens[i + 1], ">") &&
      (inFront?.kind !== "word" || inFront.text === "return");
    if (claimed || asserted || isWord(tokens[i + 1], "as")) lines.push(token.line);
  });
  return lines;
}

/** Whether a token belongs to the type that the next one ends, as `Array<` does in `as Array<StudentScope>`. */
function continuesType(tokens: readonly Token[], i: number): boolean {
  const token = tokens[i];
  if (token?.kind === "mark") return "<[|&(.".includes(token.text);
  if (token?.kind !== "word" || token.text === "as" || token.text === "is") return false;
  return (
    token.text === "readonly" || "<.".includes(tokens[i + 1]?.text ?? " ") || "|&".includes(tokens[i + 1]?.text ?? " ")
  );
}

/** Numbers made out of anything, so that "" would be 0. */
export function coercesNumbers(source: string, dialect: Dialect): boolean {
  return holdsRun(readTokens(source, dialect), "coerce . number");
}

/** SQL put together from strings. */
export function buildsRawSql(source: string, dialect: Dialect): boolean {
  return holdsRun(readTokens(source, dialect), "sql . raw");
}

const OPENERS = ["better-sqlite3", "drizzle-orm/better-sqlite3"];

/** Names of openers called while the module loads; inside a function, or behind an arrow, they wait for a caller. */
export function opensAtLoad(source: string, dialect: Dialect): string[] {
  const openers = new Set<string>();
  for (const one of scanImports(source, dialect)) {
    if (one.kind !== "value" || !(OPENERS.includes(one.from) || /(^|\/)db\/client$|^\.\/client$/.test(one.from)))
      continue;
    for (const name of one.names) if (/^(open|drizzle|default$)/.test(name)) openers.add(name);
  }
  const tokens = readTokens(source, dialect);
  const byDefault = tokens.findIndex(
    (token, i) => isWord(token, "from") && OPENERS.includes(tokens[i + 1]?.text ?? ""),
  );
  if (openers.delete("default") && byDefault > 0) {
    const start = tokens.slice(0, byDefault).findLastIndex((token) => isWord(token, "import"));
    openers.add(tokens[start + 1]?.text ?? "");
  }
  const found: string[] = [];
  let depth = 0;
  let waits = false;
  tokens.forEach((token, i) => {
    if (isMark(token, "{")) depth++;
    if (isMark(token, "}")) depth--;
    if (depth === 0 && (isMark(token, ";") || isMark(token, "}"))) waits = false;
    if (isWord(token, "function") || isWord(token, "class") || (isMark(token, "=") && isMark(tokens[i + 1], ">")))
      waits = true;
    if (token.kind === "word" && openers.has(token.text) && isMark(tokens[i + 1], "(") && !waits)
      found.push(token.text);
  });
  return found;
}

/** Whether a file exports a function, and so is a statistic that owes a test. */
export function exportsFunction(source: string): boolean {
  const tokens = readTokens(source, "script");
  return tokens.some((token, i) => {
    if (!isWord(token, "export")) return false;
    const next = tokens[i + 1];
    if (isWord(next, "function") || isWord(next, "async") || isWord(next, "default")) return true;
    if (!isWord(next, "const")) return false;
    const end = tokens.findIndex((other, j) => j > i && isMark(other, ";"));
    const statement = tokens.slice(i, end < 0 ? undefined : end);
    const value = statement.findIndex((other, j) => isMark(other, "=") && !isMark(statement[j + 1], ">"));
    const first = statement[value + 1];
    return (
      isWord(first, "function") ||
      isWord(first, "async") ||
      (isMark(first, "(") && statement.some((other, j) => isMark(other, "=") && isMark(statement[j + 1], ">")))
    );
  });
}

function isMark(token: Token | undefined, text: string): boolean {
  return token?.kind === "mark" && token.text === text;
}

function isWord(token: Token | undefined, text: string): boolean {
  return token?.kind === "word" && token.text === text;
}

function holdsRun(tokens: readonly Token[], run: string): boolean {
  const parts = run.split(" ");
  return tokens.some((_, i) =>
    parts.every((part, j) => ["word", "mark"].includes(tokens[i + j]?.kind ?? "") && tokens[i + j]?.text === part),
  );
}
