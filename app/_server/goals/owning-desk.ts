import { readOwningRules } from "@/db/read/owning-rules";
import { insertOwningRule } from "@/db/write/owning-rules";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { type OwningRule, owningRuleOn, plannedRules } from "@/lib/domain/owning-rule";
import { type OwningBounds, parseOwningForm } from "@/lib/ingest/parse-owning-form";
import { buildOwningPage, type OwningSource, owningOn } from "@/lib/report/build-owning";
import type { FormModel, TextPage } from "@/lib/report/form-model";
import type { HappenPage } from "@/lib/report/happen-model";
import { policyOwning } from "@/lib/verdict/owned-since";
import { POLICY, THRESHOLDS } from "@/lib/verdict/policy";
import { sayOwning } from "@/lib/words/say-owning";
import { judgeSoon } from "../analysis/judge-soon";
import { linkTables } from "../archive/table-links";
import { dayIn, instantOf } from "../clock";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import type { Viewer } from "../gate";
import { field } from "../season/student-form";

const FORM = "owning-form";
/** Days for which a rule may be planned: a slip of the finger lies further ahead. */
const DAYS_AHEAD = 366;

const hundredths = ([low, high]: readonly [number, number]) => [Math.round(100 * low), Math.round(100 * high)] as const;

/** What a rule may say: the bounds of the policy. */
const BOUNDS: OwningBounds = {
  sessions: THRESHOLDS.ownedSessions.bounds,
  spanDays: THRESHOLDS.ownedSpan.bounds,
  restDays: THRESHOLDS.ownedRest.bounds,
  share: hundredths(THRESHOLDS.ownedShare.bounds),
  shareLow: hundredths(THRESHOLDS.ownedShareLow.bounds),
};
const PARTS = ["sessions", "spanDays", "restDays", "share", "shareLow"] as const;

function sourceOf({ db, scope, today }: Viewer): OwningSource {
  return { rules: readOwningRules(db, scope), builtIn: policyOwning(POLICY), today };
}

/** The page of the academy's owning rule. */
export function loadOwningPage(viewer: Viewer): HappenPage {
  return linkTables(viewer.words, "owning", {}, buildOwningPage(viewer.words, sourceOf(viewer)));
}

/** What leads to it from the settings. */
export function loadOwningDoor(viewer: Viewer): TextPage["parts"][number] {
  const { words, today } = viewer;
  const source = sourceOf(viewer);
  return {
    margin: words.say("owning"),
    heading: words.say("settings.owning.heading", { number: owningRuleOn(source.rules, today)?.number ?? 0 }),
    paragraphs: [sayOwning(words, owningOn(source, today))],
    links: [{ href: "/settings/owning", label: words.say("settings.owning.open") }],
  };
}

/** The rule that is in force in the viewer's academy. */
export function loadRuleNow(viewer: Viewer): OwningRule {
  return owningOn(sourceOf(viewer), viewer.today);
}

/** The form that sets the next rule; it begins with the one that was set last. */
export function loadOwningForm(viewer: Viewer, draftId: string, dropped?: string): FormModel {
  const { words, today } = viewer;
  const draft = findFormDraft(viewer, FORM, draftId);
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, FORM, spec);
  const source = sourceOf(viewer);
  const last = source.rules.at(-1) ?? source.builtIn;
  const values = { ...last, share: Math.round(100 * last.share), shareLow: Math.round(100 * last.shareLow) };
  const form: FormModel = {
    heading: words.say("owning.form.heading"),
    explains: words.say("owning.form.explains"),
    parts: [
      {
        margin: words.say("owning"),
        explains: "",
        fields: [
          ...PARTS.map((name) => {
            const [low, high] = BOUNDS[name];
            const hint = words.say(`owning-form.${name}.hint`, { low, high, reason: words.say(`owning.why.${name}`) });
            return one({ name, kind: "number", required: "yes", value: String(values[name]), hint });
          }),
          one({
            ...{ name: "from", kind: "date", required: "yes", value: today },
            hint: words.say("owning-form.from.hint", { earliest: today }),
          }),
          one({ name: "why", kind: "text", required: "yes", hint: words.say("owning-form.why.hint") }),
        ],
      },
    ],
    grid: null,
    submit: words.say("owning.form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [],
  };
  return withKeep(viewer, form, { form: FORM, studentId: "", draftId, dropped });
}

interface RuleSet {
  readonly kind: "set";
}

/** Sets a rule from a day on, once, and judges anew whoever it reaches; a refused form is kept. */
export function setOwning(viewer: Viewer, data: FormData): RuleSet | Refused {
  const outcome = submitOnce<RuleSet>(viewer, FORM, data, () => enterRule(viewer, data));
  if (outcome.kind === "set") void judgeSoon(viewer);
  return outcome;
}

function enterRule(viewer: Viewer, data: FormData): RuleSet | Refused {
  const { words, db, scope, academy, today } = viewer;
  const source = sourceOf(viewer);
  const typed = String(data.get("from") ?? "");
  const asked = typed > today ? typed : today;
  const parsed = parseOwningForm(data, {
    bounds: BOUNDS,
    earliest: today,
    latest: dayFromNumber(dayNumber(today) + DAYS_AHEAD),
    standing: plannedRules(source.rules, asked).length > 0 ? null : owningOn(source, asked),
  });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    const refusal = words.say("owning.form.refusal", { problems: Object.keys(errors).length });
    return { kind: "refused", draftId: keepFormDraft(viewer, FORM, data, errors, refusal) };
  }
  const { rule, why } = parsed.value;
  const dayOf = (instant: string): string => dayIn(academy.zone, new Date(instant));
  const by = { who: viewer.name, why, now: instantOf(academy), today, dayOf };
  const set = insertOwningRule(db, scope, rule, by);
  if (set.kind !== "inserted") throw new Error(`a rule before ${set.earliest}`);
  return { kind: "set" };
}
