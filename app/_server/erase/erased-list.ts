import { createHash } from "node:crypto";
import {
  appendFileSync,
  chmodSync,
  closeSync,
  copyFileSync,
  existsSync,
  fstatSync,
  fsyncSync,
  ftruncateSync,
  openSync,
  readdirSync,
  readFileSync,
  statSync,
} from "node:fs";
import path from "node:path";
import { type ErasedLine, erasedLineSchema } from "@/lib/domain/erasure";

const END = ".erased";

/** Where the list of erased students of a database, or of a copy of one, lies: beside it, in no restore's way. */
export function erasedListOf(file: string): string {
  return `${file}${END}`;
}

/** How a student stands in the list: nobody can be found by it who isn't at hand already. */
export function erasedDigest({
  academyId,
  studentId,
}: {
  readonly academyId: string;
  readonly studentId: string;
}): string {
  return createHash("sha256").update(`${academyId}\n${studentId}`).digest("hex");
}

function parseLine(text: string): ErasedLine | null {
  try {
    return erasedLineSchema.parse(JSON.parse(text));
  } catch {
    // The end of a line whose writing was broken off: its erasure was never acknowledged.
    return null;
  }
}

/** What stands in a list, by digest; the first line of a digest holds. No list: nobody was erased. */
export function readErasedList(list: string): ReadonlyMap<string, ErasedLine> {
  if (!existsSync(list)) return new Map();
  const lines = readFileSync(list, "utf8")
    .split("\n")
    .flatMap((text) => parseLine(text) ?? []);
  return new Map(lines.reverse().map((line) => [line.student, line]));
}

function syncFolder(file: string): void {
  const handle = openSync(path.dirname(file), "r");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Puts a text at the end of the list and on the disk, or leaves the list as it was. */
function appendWhole(handle: number, text: string, list: string): void {
  const before = fstatSync(handle).size;
  try {
    appendFileSync(handle, text);
    fsyncSync(handle);
    syncFolder(list);
  } catch (error) {
    // A line that stands here erases with the next start, though whoever asked for it has read that nothing was saved.
    ftruncateSync(handle, before);
    fsyncSync(handle);
    throw error;
  }
}

/**
 * Adds lines, on the disk when it returns; those that stand there already aren't added again.
 *
 * @returns takes them back, for an erasure that was not done after all
 * @throws what the disk says where it took nothing, or a part; the list is as it was
 */
export function addToErasedList(list: string, lines: readonly ErasedLine[]): () => void {
  const known = readErasedList(list);
  const added = lines.filter(({ student }) => !known.has(student));
  if (added.length === 0) return () => {};
  const handle = openSync(list, "a+", 0o600);
  try {
    chmodSync(list, 0o600);
    const before = statSync(list).size;
    // After a line that was broken off the next one begins anew.
    const begin = before > 0 && !readFileSync(list, "utf8").endsWith("\n") ? "\n" : "";
    const text = begin + added.map((line) => `${JSON.stringify(line)}\n`).join("");
    appendWhole(handle, text, list);
    const after = statSync(list).size;
    return () => takeBack(list, before, after);
  } finally {
    closeSync(handle);
  }
}

function takeBack(list: string, before: number, after: number): void {
  const handle = openSync(list, "r+");
  try {
    // Another process has added to it meanwhile: the lines stay, and the next start erases.
    if (fstatSync(handle).size !== after) return;
    ftruncateSync(handle, before);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Lays the list of the data beside a copy of them. */
export function copyErasedList(database: string, copy: string): void {
  const list = erasedListOf(database);
  if (!existsSync(list)) return;
  copyFileSync(list, erasedListOf(copy));
  chmodSync(erasedListOf(copy), 0o600);
}

/** Adds to the list of the data what stands in any list beside a copy: a later copy may know of more. */
export function takeInErasedLists(database: string, copy: string): void {
  const folder = path.dirname(copy);
  const lists = readdirSync(folder).filter((name) => name.endsWith(END));
  const lines = lists.flatMap((name) => [...readErasedList(path.join(folder, name)).values()]);
  addToErasedList(erasedListOf(database), lines);
}
