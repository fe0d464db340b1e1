import type { Component } from "./component-list";

/** How old the answer of a registry may be before a release: TRUST.md, H3. Days. */
export const OLDEST_ANSWER_DAYS = 14;
const DAY_MS = 86_400_000;

/** One warning about one package. */
export interface Advisory {
  readonly package: string;
  readonly severity: string;
  readonly title: string;
  /** The versions that it is about, as npm writes a range. */
  readonly range: string;
}

/** What a registry once answered about these very packages. */
export interface AdvisoryFile {
  /** The day of the answer, YYYY-MM-DD. */
  readonly askedOn: string;
  /** "name@version" of all that was asked about. */
  readonly asked: readonly string[];
  readonly advisories: readonly Advisory[];
}

const DAY = /^\d{4}-\d\d-\d\d$/;

/** What `npm audit --json` answered; null: no registry answered it. */
export function readAudit(text: string): Advisory[] | null {
  const { vulnerabilities } = parsed(text);
  if (!isRecord(vulnerabilities)) return null;
  return Object.entries(vulnerabilities).flatMap(([name, entry]) => {
    const via = isRecord(entry) && Array.isArray(entry.via) ? entry.via : [];
    // Of a package that only depends on one with a warning npm names the other: that one has an entry of its own.
    return via.filter(isRecord).map(({ severity, title, range }) => ({
      package: name,
      severity: String(severity),
      title: String(title),
      range: String(range),
    }));
  });
}

/** An advisory file; null: it is none. */
export function readAdvisoryFile(text: string): AdvisoryFile | null {
  const { askedOn, asked, advisories } = parsed(text);
  const isFile = typeof askedOn === "string" && DAY.test(askedOn) && Array.isArray(asked) && Array.isArray(advisories);
  return isFile ? { askedOn, asked, advisories } : null;
}

/** What an older answer is worth for the packages of today. */
export interface Standing {
  /** Whole days since the answer. */
  readonly ageDays: number;
  readonly tooOld: boolean;
  /** "name@version" that nobody has asked about. */
  readonly unasked: readonly string[];
  readonly advisories: readonly Advisory[];
}

/** Sets an answer beside the component list of today (`today`: YYYY-MM-DD); warnings about what isn't used any more are left out. */
export function standingOf(file: AdvisoryFile, components: readonly Component[], today: string): Standing {
  const asked = new Set(file.asked);
  const versions = components.map(({ name, version }) => `${name}@${version}`);
  const names = new Set(components.map(({ name }) => name));
  const ageDays = Math.floor((Date.parse(today) - Date.parse(file.askedOn)) / DAY_MS);
  return {
    ageDays,
    // A day that has not come yet was written by a wrong clock, and says nothing about the age.
    tooOld: ageDays > OLDEST_ANSWER_DAYS || ageDays < 0,
    unasked: [...new Set(versions.filter((each) => !asked.has(each)))].sort(),
    advisories: file.advisories.filter((one) => names.has(one.package)),
  };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function parsed(text: string): Record<string, unknown> {
  try {
    const value: unknown = JSON.parse(text);
    return isRecord(value) ? value : {};
  } catch {
    return {};
  }
}
