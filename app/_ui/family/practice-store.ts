/** Practice that could not be sent. That something hurts is never among it, nor anybody's name. */
export interface KeptLog {
  /** Under which it is saved once, however often it is sent. */
  readonly key: string;
  /** As the server said it when it was written down; the phone's own clock may be wrong. */
  readonly day: string;
  /** Digits, or empty. */
  readonly minutes: string;
  readonly balls: string;
  readonly felt: string;
  readonly hurts: "no";
}

const PREFIX = "proofband-practice";
/** That pain must be asked about again, and nothing of it. */
const ASK = "ask";

/** What a browser holds that forbids storing, or is full: as long as the page is open. */
const inMemory = new Map<string, string>();

function nameOf(pageId: string, what: string): string {
  return `${PREFIX} ${pageId} ${what}`;
}

function put(name: string, value: string): "kept" | "in-memory" {
  try {
    localStorage.setItem(name, value);
    inMemory.delete(name);
    return "kept";
  } catch {
    inMemory.set(name, value);
    return "in-memory";
  }
}

function take(name: string): void {
  inMemory.delete(name);
  try {
    localStorage.removeItem(name);
  } catch {
    // Nothing lies there then.
  }
}

function storedNames(): readonly string[] {
  try {
    return Object.keys(localStorage);
  } catch {
    return [];
  }
}

function namesOf(pageId: string): readonly string[] {
  return [...new Set([...storedNames(), ...inMemory.keys()])].filter((name) => name.startsWith(nameOf(pageId, "")));
}

// Whatever else wrote there: only what this page could have kept is read.
function readLog(name: string): KeptLog[] {
  try {
    const { key, day, minutes, balls, felt } = JSON.parse(inMemory.get(name) ?? localStorage.getItem(name) ?? "");
    const isOurs =
      /^[\w-]{36}$/.test(key) &&
      /^\d{4}-\d\d-\d\d$/.test(day) &&
      /^\d{0,4} \d{0,4} (?:easy|hard|)$/.test(`${minutes} ${balls} ${felt}`);
    return isOurs ? [{ key, day, minutes, balls, felt, hurts: "no" }] : [];
  } catch {
    return [];
  }
}

/** Keeps a log; `in-memory`: only until the page is left. Under the same key it is the same log. */
export function keepLog(pageId: string, { key, day, minutes, balls, felt }: Omit<KeptLog, "hurts">) {
  return put(nameOf(pageId, key), JSON.stringify({ key, day, minutes, balls, felt, hurts: "no" }));
}

/** What is kept for a page, by day. */
export function keptLogs(pageId: string): readonly KeptLog[] {
  return namesOf(pageId)
    .flatMap(readLog)
    .sort((a, b) => a.day.localeCompare(b.day) || a.key.localeCompare(b.key));
}

/** Takes out what was sent, or thrown away. */
export function dropLog(pageId: string, key: string): void {
  take(nameOf(pageId, key));
}

/** Keeps that pain has to be asked about again. */
export function keepPain(pageId: string): void {
  put(nameOf(pageId, ASK), ASK);
}

export function isPainKept(pageId: string): "asked-again" | "no" {
  return namesOf(pageId).includes(nameOf(pageId, ASK)) ? "asked-again" : "no";
}

/** Pain was told, or is over. */
export function dropPain(pageId: string): void {
  take(nameOf(pageId, ASK));
}

/** Takes out all that is kept for a page that opens no more. */
export function dropAll(pageId: string): void {
  for (const name of namesOf(pageId)) take(name);
}
