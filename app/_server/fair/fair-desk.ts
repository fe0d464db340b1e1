import { randomBytes, randomUUID } from "node:crypto";
import { readDrills } from "@/db/read/drills";
import { insertFairStep, insertFairTest } from "@/db/write/fair-tests";
import { isOffered } from "@/lib/domain/drill-version";
import { planFairTest } from "@/lib/drills/fair-test-plan";
import { fairFraction, fairTestState } from "@/lib/drills/fair-test-state";
import { judgeFairTest } from "@/lib/drills/judge-fair-test";
import { parseFairForm } from "@/lib/ingest/parse-fair-form";
import { instantOf } from "../clock";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import type { Viewer } from "../gate";
import { type KeptFairTest, loadKeptTests, runningTests, spreadOfGains, valuesOf } from "./fair-source";
import { numbersOf, orderOfLot } from "./lot";

/** The words under which the form that plans a test is kept. */
export const FAIR_FORM = "fair-form";

/** Bytes of a seed: nobody guesses it. */
const SEED_BYTES = 16;

interface Planned {
  readonly kind: "planned";
}

/** What a form says of a test, or what is wrong with it. */
export function readFairForm(viewer: Viewer, data: FormData) {
  const days = Number(data.get("days") ?? "");
  return parseFairForm(data, {
    library: readDrills(viewer.db, viewer.scope).filter((drill) => isOffered(drill, viewer.today)),
    spreadOf: (fundamentalId) => spreadOfGains(viewer, fundamentalId, days > 0 ? days : 1),
  });
}

/** Plans a test by the lot, once; a refused form is kept. */
export function planLot(viewer: Viewer, data: FormData): Planned | Refused {
  return submitOnce<Planned>(viewer, FAIR_FORM, data, () => enterPlan(viewer, data));
}

function enterPlan(viewer: Viewer, data: FormData): Planned | Refused {
  const { words, db, scope, academy, today, name } = viewer;
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, FAIR_FORM, data, errors, refusal),
  });
  const parsed = readFairForm(viewer, data);
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("fair-form.refusal", { problems: Object.keys(errors).length }));
  }
  const wished = parsed.value;
  const plan = planFairTest(wished);
  if (plan.kind === "out-of-reach")
    return refuse(
      { least: words.say("fair-form.out-of-reach", { most: plan.most }) },
      words.say("fair-form.refusal", { problems: 1 }),
    );
  // A student may draw for one fundamental in one test alone.
  if (runningTests(viewer).some(({ fundamentalId }) => fundamentalId === wished.fundamentalId))
    return refuse({}, words.say("fair-form.runs"));
  const made = insertFairTest(db, scope, {
    ...wished,
    ...{ id: randomUUID(), students: plan.students, seed: randomBytes(SEED_BYTES).toString("hex") },
    ...{ day: today, who: name, recordedAt: instantOf(academy) },
  });
  if (made.kind === "unknown-drill")
    return refuse({ first: words.say("form.unexpected") }, words.say("fair-form.refusal", { problems: 1 }));
  return { kind: "planned" };
}

/** Takes the planned look that is due, or ends a test; a word of `fair.done.…`. */
export function stepLot(viewer: Viewer, data: FormData): "looked" | "too-few" | "ended" | "unchanged" {
  const kept = loadKeptTests(viewer).find(({ test }) => test.id === data.get("testId"));
  if (kept === undefined) return "unchanged";
  return data.get("wish") === "end" ? endTest(viewer, kept) : lookAt(viewer, kept);
}

function stampOf({ today, name, academy }: Viewer) {
  return { day: today, who: name, recordedAt: instantOf(academy) };
}

function endTest(viewer: Viewer, { test, steps }: KeptFairTest): "ended" | "unchanged" {
  const step = { number: steps.length + 1, kind: "end" as const, figures: null, why: "", ...stampOf(viewer) };
  return insertFairStep(viewer.db, viewer.scope, test, step, []).kind === "inserted" ? "ended" : "unchanged";
}

function lookAt(viewer: Viewer, kept: KeptFairTest): "looked" | "too-few" | "unchanged" {
  const { db, scope, today } = viewer;
  const { test, draws, steps, values } = kept;
  const { next, complete } = fairTestState(test, draws, steps, today);
  if (next === null || next.due === "no") return "unchanged";
  const fresh = valuesOf(viewer, kept, complete, next.number - 1);
  const all = [...values, ...fresh];
  const before = steps.flatMap(({ figures }) => (figures === null ? [] : [figures.fraction]));
  const found = judgeFairTest({
    ...{ test, draws, values: all },
    fractions: [...before, fairFraction(test, next.number, complete.length)],
    missing: complete.filter(({ id }) => all.every(({ allocationId }) => allocationId !== id)).length,
    orderOf: (coachId, places) => orderOfLot(test, coachId, places),
    rng: numbersOf(`${test.seed} looks`),
  });
  if (found.kind !== "ok") return "too-few";
  const step = { number: steps.length + 1, kind: "look" as const, figures: found.value, why: "", ...stampOf(viewer) };
  return insertFairStep(db, scope, test, step, fresh).kind === "inserted" ? "looked" : "unchanged";
}
