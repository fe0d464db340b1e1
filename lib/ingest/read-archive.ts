import { Unzip, UnzipInflate } from "fflate";
import { ARCHIVE_FORMAT, ARCHIVE_VERSION, type Archive, archiveSchema } from "@/lib/domain/archive";
import { type ArchiveIssue, checkArchive } from "./check-archive";
import { isZip, mayBeArchive } from "./may-be-archive";

/** The part of an archive that holds everything in one structure; its name tells an archive from a workbook. */
export const ARCHIVE_ENTRY = "archive.json";

/** More than this isn't unpacked: sixty students of a season take about 20 MB. */
export const UNPACKED_LIMIT_MB = 128;

/** Bytes as an archive; `no-archive`: something else, that other readers may know. */
export type ArchiveReading =
  | { readonly kind: "no-archive" }
  | { readonly kind: "too-big"; readonly limit: number }
  | { readonly kind: "other-version"; readonly version: string }
  | { readonly kind: "broken"; readonly issues: readonly ArchiveIssue[] }
  | { readonly kind: "archive"; readonly archive: Archive };

const LIMIT = UNPACKED_LIMIT_MB * 1024 * 1024;

/**
 * More lists and objects than this aren't parsed: 60 students of a season have some hundred thousand, and two millions of
 * empty ones take 0.8 s and 130 MB, measured.
 */
const MOST_PARTS = 2_000_000;
const FIRST_ISSUES = 20;

type Unpacked = Uint8Array | "none" | "too-big" | "damaged";

/** Bytes to unpack at a time, so that a bomb is stopped soon after the limit. */
const STEP = 65_536;

// Entry by entry and counted as it comes: what a zip says of its own sizes proves nothing.
function unpackEntry(bytes: Uint8Array): Unpacked {
  const parts: Uint8Array[] = [];
  let [size, state] = [0, "none" as "none" | "open" | "whole" | "too-big"];
  const unzip = new Unzip((file) => {
    if (file.name !== ARCHIVE_ENTRY || state !== "none") return;
    state = "open";
    file.ondata = (error, chunk, final) => {
      if (error) throw error;
      size += chunk.length;
      if (size > LIMIT) state = "too-big";
      else parts.push(chunk);
      if (state === "too-big") file.terminate();
      else if (final) state = "whole";
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  try {
    for (let at = 0; at < bytes.length && state !== "too-big"; at += STEP)
      unzip.push(bytes.subarray(at, at + STEP), at + STEP >= bytes.length);
  } catch {
    return state === "none" ? "none" : "damaged";
  }
  if (state === "too-big" || state === "none") return state;
  if (state !== "whole") return "damaged";
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** Whether a text holds more parts than any record has; counted before it is parsed. */
function isCrowded(bytes: Uint8Array): "crowded" | "fine" {
  let parts = 0;
  for (const byte of bytes) if (byte === 0x7b || byte === 0x5b) parts++;
  return parts > MOST_PARTS ? "crowded" : "fine";
}

function parseText(bytes: Uint8Array): unknown {
  if (isCrowded(bytes) === "crowded") return undefined;
  try {
    return JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch {
    return undefined;
  }
}

/** `students[3].sessions[0].day`. */
function pathOf(path: readonly PropertyKey[]): string {
  return path
    .map((part) => (typeof part === "number" ? `[${part}]` : `.${String(part)}`))
    .join("")
    .replace(/^\./, "");
}

function readValue(value: unknown): ArchiveReading {
  if (typeof value !== "object" || value === null || !("format" in value) || value.format !== ARCHIVE_FORMAT)
    return { kind: "no-archive" };
  const version = "version" in value ? value.version : undefined;
  if (version !== ARCHIVE_VERSION) return { kind: "other-version", version: String(version).slice(0, 20) };
  const parsed = archiveSchema.safeParse(value);
  if (!parsed.success)
    return {
      kind: "broken",
      issues: parsed.error.issues.slice(0, FIRST_ISSUES).map((issue) => ({
        where: pathOf(issue.path),
        code: issue.code === "unrecognized_keys" ? "unknown-field" : "value",
      })),
    };
  const issues = checkArchive(parsed.data);
  return issues.length > 0
    ? { kind: "broken", issues: issues.slice(0, FIRST_ISSUES) }
    : { kind: "archive", archive: parsed.data };
}

/**
 * Reads an archive: the zip that was taken out, or its `archive.json` alone. A zip without that entry, a table and any other
 * text are no archive. Nothing of a file is trusted: sizes are counted, every field is checked, and what the archive names
 * must be in it.
 *
 * @param bytes the file as it came
 */
export function readArchive(bytes: Uint8Array): ArchiveReading {
  if (isZip(bytes)) {
    const unpacked = unpackEntry(bytes);
    if (unpacked === "none") return { kind: "no-archive" };
    if (unpacked === "too-big") return { kind: "too-big", limit: UNPACKED_LIMIT_MB };
    if (unpacked === "damaged") return { kind: "broken", issues: [{ where: ARCHIVE_ENTRY, code: "damaged" }] };
    const value = parseText(unpacked);
    const read = value === undefined ? undefined : readValue(value);
    return read === undefined || read.kind === "no-archive"
      ? { kind: "broken", issues: [{ where: ARCHIVE_ENTRY, code: "not-json" }] }
      : read;
  }
  if (!mayBeArchive(bytes)) return { kind: "no-archive" };
  return readValue(parseText(bytes));
}
