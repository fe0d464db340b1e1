import { updateKeeping } from "@/db/write/academies";
import { KEEPING_THRESHOLDS } from "@/lib/domain/keeping-thresholds";
import { KEEPING_SETTINGS, parseKeepingForm } from "@/lib/ingest/parse-keeping-form";
import type { FormModel, TextPage } from "@/lib/report/form-model";
import type { Link } from "@/lib/report/page-model";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import type { Viewer } from "../gate";
import { field } from "../season/student-form";

const FORM = "keeping-form";

type Part = TextPage["parts"][number];

/** What stands around the form: the way back, and why each setting has its bounds. */
export interface KeepingRoom {
  readonly documentTitle: string;
  readonly back: Link;
  readonly reasons: Part;
}

/** What leads to the page from the settings. */
export function loadKeepingDoor({ words, academy }: Viewer): Part {
  const { keepMonths, linkDays, ownConsentAge } = academy;
  return {
    margin: words.say("keeping"),
    heading: words.say("keeping.door.heading", { months: keepMonths }),
    paragraphs: [words.say("keeping.door.what", { days: linkDays, age: ownConsentAge })],
    links: [{ href: "/settings/privacy", label: words.say("keeping.door.link") }],
  };
}

export function loadKeepingRoom({ words }: Viewer): KeepingRoom {
  return {
    documentTitle: words.say("document-title", { page: words.say("keeping") }),
    back: { href: "/settings", label: words.say("keeping.back") },
    reasons: {
      margin: words.say("keeping.reasons"),
      heading: words.say("keeping.reasons.heading"),
      paragraphs: [...KEEPING_SETTINGS.map((name) => words.say(`keeping.why.${name}`)), words.say("keeping.unsigned")],
      links: [],
    },
  };
}

/** The form of what the academy says about keeping. */
export function loadKeepingForm(viewer: Viewer, draftId: string, dropped?: string): FormModel {
  const { words, academy } = viewer;
  const draft = findFormDraft(viewer, FORM, draftId);
  const fields = KEEPING_SETTINGS.map((name) => {
    const [low, high] = KEEPING_THRESHOLDS[name].bounds;
    const hint = words.say(`keeping-form.${name}.hint`, { low, high });
    return field(words, draft, FORM, { name, kind: "number", required: "yes", value: String(academy[name]), hint });
  });
  const form: FormModel = {
    heading: words.say("keeping-form.heading"),
    explains: words.say("keeping-form.explains"),
    parts: [{ margin: words.say("keeping"), explains: words.say("keeping-form.rules"), fields }],
    grid: null,
    submit: words.say("keeping-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [],
  };
  return withKeep(viewer, form, { form: FORM, studentId: "", draftId, dropped });
}

/** Keeps the settings, once; the demo's stand still. */
export function saveKeeping(viewer: Viewer, data: FormData): { readonly kind: "saved" } | Refused {
  return submitOnce<{ readonly kind: "saved" }>(viewer, FORM, data, () => enterKeeping(viewer, data));
}

function enterKeeping(viewer: Viewer, data: FormData): { readonly kind: "saved" } | Refused {
  const { words, db, scope, academy } = viewer;
  const refuse = (errors: Readonly<Record<string, string>>): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, FORM, data, errors, words.say("settings.refusal")),
  });
  const parsed = parseKeepingForm(data);
  if (parsed.kind === "issues") return refuse(sayFieldIssues(words, parsed.issues));
  if (academy.kind === "demo") return refuse({ keepMonths: words.say("settings.demo") });
  updateKeeping(db, scope, parsed.value);
  return { kind: "saved" };
}
