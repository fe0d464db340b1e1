import path from "node:path";

/** What a kind, a code and the framework's number look like; of anything else a part may be a value. */
const [KIND, CODE, NUMBER] = [/^[A-Za-z]{1,40}$/, /^[A-Z][A-Z0-9_]{1,60}$/, /^\d+(?:@E\d+)?$/];
/** A file inside the project with its line and column, as a place of a stack ends. */
const PLACE = /^[^\s:]+:\d+:\d+$/;

/** The places of a stack inside the project: what lies above it is the machine's, and a place outside says nothing of ours. */
function placesIn(stack: string): string[] {
  const root = `${process.cwd()}${path.sep}`;
  return stack
    .split("\n")
    .filter((line) => /^\s+at /.test(line) && line.includes(root))
    .map((line) => line.slice(line.lastIndexOf(root) + root.length).replace(/\)$/, ""))
    .filter((place) => PLACE.test(place))
    .map((place) => `    at ${place}`);
}

/**
 * The frames alone: the text stands before them and may itself hold lines that look like places. One that was changed since
 * is not found there; then the last lines are taken, as many as a stack has at most.
 */
function framesOf({ stack = "", message }: Error): string {
  const begins = stack.indexOf(message);
  if (begins >= 0) return stack.slice(begins + message.length);
  return stack.split("\n").slice(-Error.stackTraceLimit).join("\n");
}

/**
 * A failure as the log may have it: its kind, code and number, and the places inside the project where it happened. Nothing of
 * its text: a name that somebody typed is a word like any other there, and the places say which of our sentences it was.
 */
export function sayFailure(error: Error): string {
  const { code, digest } = error as { readonly code?: unknown; readonly digest?: unknown };
  const kind = KIND.test(error.name) ? error.name : "Error";
  const facts = [CODE.test(String(code)) ? [code] : [], NUMBER.test(String(digest)) ? [digest] : []].flat();
  return [[kind, ...facts].join(" "), ...placesIn(framesOf(error))].join("\n");
}

/** Lets no failure into the log as it is: the framework prints them whole. */
export function quietFailures(): void {
  const { console: log } = globalThis;
  const say = log.error.bind(log);
  log.error = (...all: unknown[]) => say(...all.map((each) => (each instanceof Error ? sayFailure(each) : each)));
}
