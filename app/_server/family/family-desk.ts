import { createHash, randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { readAssignments } from "@/db/read/drills";
import { readFamilyPractice } from "@/db/read/family-practice";
import { readReceipt } from "@/db/read/receipts";
import { insertFamilyRequest } from "@/db/write/family-links";
import { insertFamilyPractice, updateFamilyPracticeVoided } from "@/db/write/family-practice";
import { insertReceipt } from "@/db/write/receipts";
import { dayFromNumber, dayNumber, isCalendarDay } from "@/lib/domain/calendar-day";
import { FAMILY_REQUESTS } from "@/lib/domain/family-link";
import { type FamilyForm, parseFamilyPractice } from "@/lib/ingest/parse-family-practice";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import { currentInstant, instantOf } from "../clock";
import { whyNotRecorded } from "../consent/consent-gate";
import { isDraftId } from "../draft/draft-forms";
import type { FamilyViewer } from "../family-gate";
import { holdOnce } from "../people/shown-once";
import { typedKey } from "./family-keys";
import { familyTask } from "./family-task";

/** What became of a press, as the page says it afterwards; `refused`: the form comes back as it was typed. */
export type FamilyOutcome = "logged" | "hurts" | "over" | "back" | "asked" | "asked-already" | "refused" | "nothing";

const KIND = "family-practice";
const FIELDS = ["day", "minutes", "balls", "felt", "hurts", "place"] as const;
/** Says by which form it was sent; no part of what was said. */
const TAP = "tap";
/** No field that is typed into holds more. */
const LONGEST = 20;

/** What was typed and refused. */
export interface TypedDay {
  readonly values: Readonly<Record<string, string>>;
  readonly errors: Readonly<Record<string, string>>;
  /** Whether it was written down all the same that something hurts. */
  readonly pain: "saved" | "none";
  /** Whether one of the buttons with minutes sent it, or the form with all fields. */
  readonly form: "tap" | "exact";
  /** Of the form: mended and sent again it is the same one, and says no second time that something hurts. */
  readonly key: string;
}

function typedIn(data: FormData): TypedDay["values"] {
  return Object.fromEntries(FIELDS.map((name) => [name, String(data.get(name) ?? "").slice(0, LONGEST)]));
}

function formOf(data: FormData): TypedDay["form"] {
  return data.get(TAP) === "yes" ? "tap" : "exact";
}

function digestOf(said: unknown): string {
  return createHash("sha256").update(JSON.stringify(said)).digest("hex");
}

/** Today and as many days before it, latest first. */
function daysBack({ today }: FamilyViewer, before: number): readonly string[] {
  return Array.from({ length: before + 1 }, (_, back) => dayFromNumber(dayNumber(today) - back));
}

function read(family: FamilyViewer, data: FormData, days: readonly string[]) {
  const { db, student, today } = family;
  const sums = new Map<string, { minutes: number; balls: number }>();
  for (const { day, minutes, balls } of readFamilyPractice(db, family.pain, days.at(-1) ?? today)) {
    const sum = sums.get(day) ?? { minutes: 0, balls: 0 };
    sums.set(day, { minutes: sum.minutes + (minutes ?? 0), balls: sum.balls + (balls ?? 0) });
  }
  const context = { days, drills: readAssignments(db, student), onFile: sums };
  return parseFamilyPractice(data, context, (day) => familyTask(family, day)?.assignmentId ?? "");
}

function writtenBy({ link, academy }: FamilyViewer) {
  return { source: "family", who: link.label, recordedAt: instantOf(academy) } as const;
}

// Of pain there is a row of its own: that it is over is said by taking that one back, and what was practised stays. The same form
// makes one row, unless it was said to be over since.
function writePain(family: FamilyViewer, key: string, { day, place }: NonNullable<FamilyForm["hurting"]>): void {
  const { db, student } = family;
  const id = `${student.studentId} ${digestOf([key, day, place])}`;
  const nothing = { assignmentId: null, minutes: null, balls: null, felt: null };
  const row = { day, ...nothing, pain: place, ...writtenBy(family) };
  if (insertFamilyPractice(db, student, { id, ...row }) === 1) return;
  if (readFamilyPractice(db, family.pain, day).some((each) => each.id === id)) return;
  insertFamilyPractice(db, student, { id: `${student.studentId} ${randomUUID()}`, ...row });
}

/** Why what was practised isn't taken, by field; null: it is. */
function whyRefused(family: FamilyViewer, practised: FamilyForm["practised"]): TypedDay["errors"] | null {
  const { words, student } = family;
  const say = (code: string): string =>
    words.say(words.has(`family.issue.${code}`) ? `family.issue.${code}` : "family.issue.other");
  if (practised.kind === "issues")
    return Object.fromEntries(practised.issues.map(({ field, code }) => [field, say(code)]));
  if (practised.value === null || whyNotRecorded(family, student) === null) return null;
  return { minutes: say("no-consent") };
}

interface Entered {
  readonly outcome: "logged" | "hurts" | "refused";
  /** What is wrong with what was practised, by field. */
  readonly errors: TypedDay["errors"];
  readonly values: TypedDay["values"];
  /** Of the form from now on. */
  readonly key: string;
  readonly pain: TypedDay["pain"];
}

/**
 * Writes down practice of one of some days, once: the same form sent again, by a double tap, by Back or by a phone that had lost
 * the answer, changes nothing. That something hurts is written first and in any case, because it stops the work and the coach
 * has to know; only the rest can be refused.
 */
function enterPractice(family: FamilyViewer, data: FormData, days: readonly string[]): Entered {
  const { db, scope, student } = family;
  const values = typedIn(data);
  const { hurting, practised } = read(family, data, days);
  const sent = String(data.get("key") ?? "");
  const [kind, digest] = [`${KIND} ${student.studentId}`, digestOf(values)];
  const pain = hurting === null ? "none" : "saved";
  const done = { outcome: hurting === null ? "logged" : "hurts", errors: {}, values, key: sent, pain } as const;
  return inTransaction(db, () => {
    const receipt = isDraftId(sent) ? readReceipt(db, scope, sent) : undefined;
    if (receipt?.kind === kind && receipt.outcome === digest) return done;
    if (hurting !== null) writePain(family, isDraftId(sent) ? sent : randomUUID(), hurting);
    // Another content under a used key, as after Back, is another day's practice.
    const key = isDraftId(sent) && !receipt ? sent : randomUUID();
    const errors = whyRefused(family, practised);
    if (errors !== null) return { ...done, outcome: "refused", errors, key };
    const entry = practised.kind === "ok" ? practised.value : null;
    const id = `${student.studentId} ${key} ${entry?.day}`;
    if (entry !== null) insertFamilyPractice(db, student, { id, ...entry, pain: null, ...writtenBy(family) });
    insertReceipt(db, scope, { key, kind, outcome: digest, savedAt: currentInstant() });
    return done;
  });
}

/** Logs practice of today or yesterday; a refused form waits to be shown as it was typed. */
export function logFamilyPractice(family: FamilyViewer, data: FormData): FamilyOutcome {
  const { outcome, ...typed } = enterPractice(family, data, daysBack(family, 1));
  if (outcome === "refused") holdOnce(typedKey(family), { ...typed, form: formOf(data) } satisfies TypedDay);
  return outcome;
}

/**
 * Logs what a phone kept without signal: on the day it was made for, as the page said it then, while the page shows that day.
 * What is refused stays on the phone, with the reason; nothing is held here.
 */
export function logKeptPractice(family: FamilyViewer, data: FormData): { outcome: FamilyOutcome; why: string } {
  const { words, today } = family;
  const days = daysBack(family, FAMILY_THRESHOLDS.logDays.value - 1);
  const day = String(data.get("day") ?? "");
  if (!days.includes(day)) {
    const late = day > today || !isCalendarDay(day) ? "family.kept.day.not-yet" : "family.kept.day.too-old";
    return { outcome: "refused", why: words.say(late) };
  }
  const { outcome, errors } = enterPractice(family, data, days);
  return { outcome, why: [...new Set(Object.values(errors))].join(" ") };
}

/** Practice as it is sent: just now, or kept on a phone until there was signal. */
export function takeFamilyPractice(family: FamilyViewer, data: FormData) {
  return data.get("kept") === "yes" ? logKeptPractice(family, data) : logFamilyPractice(family, data);
}

/** Takes back what the family logged, or says of all that hurt that it is over. */
export function takeFamilyPracticeBack(family: FamilyViewer, data: FormData): FamilyOutcome {
  const { db, student, academy, today } = family;
  const voidedAt = instantOf(academy);
  if (data.get("hurts") !== "over") {
    const practiceId = String(data.get("practiceId") ?? "");
    return updateFamilyPracticeVoided(db, student, { practiceId, voidedAt }) === "taken-back" ? "back" : "nothing";
  }
  return inTransaction(db, () => {
    const hurting = readFamilyPractice(db, family.pain, today).filter(({ pain }) => pain !== null);
    for (const { id } of hurting) updateFamilyPracticeVoided(db, student, { practiceId: id, voidedAt });
    return hurting.length > 0 ? "over" : "nothing";
  });
}

/** Asks the coach for something on the family's behalf. */
export function askOfCoach({ db, student, link }: FamilyViewer, data: FormData): FamilyOutcome {
  const kind = FAMILY_REQUESTS.find((each) => each === data.get("kind"));
  if (kind === undefined) return "nothing";
  const asked = { id: randomUUID(), linkId: link.id, kind, askedAt: currentInstant() };
  return insertFamilyRequest(db, student, asked) === "asked" ? "asked" : "asked-already";
}
