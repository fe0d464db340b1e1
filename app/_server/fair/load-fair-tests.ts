import { readDrills } from "@/db/read/drills";
import { isOffered } from "@/lib/domain/drill-version";
import { planFairTest } from "@/lib/drills/fair-test-plan";
import { FAIR_TEST_THRESHOLDS } from "@/lib/drills/fair-test-thresholds";
import { FAIR_LOOKS } from "@/lib/ingest/parse-fair-form";
import { buildFairTests, buildLotPart, type FairTestSource } from "@/lib/report/build-fair-tests";
import type { FairTestsPage, LotPart } from "@/lib/report/fair-tests-model";
import type { FormModel } from "@/lib/report/form-model";
import { sayNumber, withUnit } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { type FormDraft, findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer, Viewer } from "../gate";
import { field } from "../season/student-form";
import { loadAcademyRules } from "../season/student-record";
import { FAIR_FORM, readFairForm } from "./fair-desk";
import { drillsOfTests, type KeptFairTest, loadKeptTests } from "./fair-source";
import { studentLot } from "./lot-desk";

/** Looks of a test as it is proposed. */
const USUAL_LOOKS = 2;

/** What the part of any test rests on; drills and fundamentals are read once. */
function sourcesOf(viewer: Viewer): (kept: KeptFairTest) => FairTestSource {
  const { fundamentals } = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  const drillsOf = drillsOfTests(viewer);
  return ({ test, draws, steps }) => {
    const fundamental = fundamentals.find(({ id }) => id === test.fundamentalId) ?? null;
    return { test, draws, steps, drills: drillsOf(test), fundamental };
  };
}

/** The title of the page's document. */
export function fairTestsTitle({ words }: Viewer): string {
  return words.say("document-title", { page: words.say("fair") });
}

/** The academy's tests by the lot. */
export function loadFairTests(viewer: Viewer, done: string | undefined): FairTestsPage {
  const tests = loadKeptTests(viewer).map(sourcesOf(viewer));
  return buildFairTests(viewer.words, { tests, today: viewer.today, done: done ?? null });
}

/** What the form as it is kept would take; empty: not all of it can be read. */
function takes(viewer: Viewer, draft: FormDraft | null): string {
  const data = new FormData();
  for (const [name, value] of draft?.entries ?? []) data.append(name, value);
  const read = readFairForm(viewer, data);
  if (read.kind === "issues") return "";
  const { words } = viewer;
  const plan = planFairTest(read.value);
  if (plan.kind === "out-of-reach") return words.say("fair-form.out-of-reach", { most: plan.most });
  const { fundamentals } = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  const unit = fundamentals.find(({ id }) => id === read.value.fundamentalId)?.unit ?? "deg";
  const spread = withUnit(words, sayNumber(words, read.value.spread, 1), unit);
  return words.say("fair-form.takes", { students: plan.students, spread });
}

/** The form that plans a test. */
export function loadFairForm(viewer: Viewer, draftId: string, dropped?: string): FormModel {
  const { words, db, scope, academy, today } = viewer;
  const draft = findFormDraft(viewer, FAIR_FORM, draftId);
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, FAIR_FORM, spec);
  const { fundamentals } = loadAcademyRules(db, scope, academy);
  const nameOf = (id: string): string => {
    const found = fundamentals.find((each) => each.id === id);
    return found === undefined ? id : sayFundamental(words, found);
  };
  const drills = [
    { value: "", label: words.say("fair-form.choose") },
    ...readDrills(db, scope)
      .filter((drill) => isOffered(drill, today))
      .map(({ id, name, fundamentalId }) => ({
        value: id,
        label: words.say("fair-form.drill", { drill: name, name: nameOf(fundamentalId) }),
      })),
  ];
  const form: FormModel = {
    heading: words.say("fair-form.heading"),
    explains: words.say("fair-form.explains"),
    parts: [
      {
        margin: words.say("fair"),
        explains: takes(viewer, draft),
        fields: [
          one({ name: "first", kind: "select", required: "yes", options: drills }),
          one({ name: "second", kind: "select", required: "yes", options: drills }),
          one({ name: "least", kind: "text", required: "yes" }),
          one({ name: "spread", kind: "text" }),
          one({
            ...{ name: "looks", kind: "select", required: "yes", value: String(USUAL_LOOKS) },
            options: FAIR_LOOKS.map((looks) => ({ value: String(looks), label: String(looks) })),
          }),
          one({ name: "days", kind: "number", required: "yes", value: String(FAIR_TEST_THRESHOLDS.followDays.value) }),
        ],
        refresh: words.say("plan.form.work-out"),
      },
    ],
    grid: null,
    submit: words.say("fair-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [],
  };
  return withKeep(viewer, form, { form: FAIR_FORM, studentId: "", draftId, dropped });
}

/** The lot on the page that gives a student a drill; null: no test is for it. */
export function loadLotPart(viewer: StudentViewer): LotPart | null {
  const lot = studentLot(viewer);
  if (lot === null) return null;
  const source = sourcesOf(viewer)(lot.kept);
  const { studentId } = viewer.student;
  if (lot.kind === "may") return buildLotPart(viewer.words, source, { studentId });
  const drill = source.drills[lot.draw.arm];
  return buildLotPart(viewer.words, source, { studentId, drill, day: lot.draw.day });
}
