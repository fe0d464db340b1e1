import { updateAcademy } from "@/db/write/academies";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import type { FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { judgeSoon } from "../analysis/judge-soon";
import { dayIn, readClock } from "../clock";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { type Refused, submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import type { Viewer } from "../gate";
import { field } from "../season/student-form";

const DRAFT = "settings";
const LONGEST = 80;

/** Whether a text names a time zone. */
function isZone(text: string): boolean {
  try {
    dayIn(text, readClock());
    return true;
  } catch {
    return false;
  }
}

export function textOf(data: FormData, name: string): string {
  return String(data.get(name) ?? "")
    .normalize("NFC")
    .trim()
    .slice(0, LONGEST);
}

/** What is wrong with the fields that name an academy. */
export function academyErrors(words: Words, form: string, data: FormData): Record<string, string> {
  const errors: Record<string, string> = {};
  for (const name of ["name", "ownerName"]) if (textOf(data, name) === "") errors[name] = words.say(`${form}.required`);
  if (!isZone(textOf(data, "zone"))) errors.zone = words.say(`${form}.bad-zone`);
  return errors;
}

/** The settings form of the viewer's own academy. */
export function loadSettingsForm(viewer: Viewer, draftId: string, dropped?: string): FormModel {
  const { words, academy } = viewer;
  const draft = findFormDraft(viewer, DRAFT, draftId);
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, "settings", spec);
  const form: FormModel = {
    heading: words.say("settings.heading"),
    explains: words.say("settings.lede"),
    parts: [
      {
        margin: words.say("settings.part.academy"),
        explains: words.say("settings.part.academy.explains"),
        fields: [
          one({ name: "name", kind: "text", required: "yes", value: academy.name }),
          one({ name: "ownerName", kind: "text", required: "yes", value: academy.ownerName }),
          one({ name: "zone", kind: "text", required: "yes", value: academy.zone }),
        ],
      },
      {
        margin: words.say("settings.part.season"),
        explains: words.say("settings.part.season.explains"),
        fields: [
          one({
            name: "seasonStart",
            kind: "date",
            value: academy.seasonStart === SINCE_EVER ? "" : academy.seasonStart,
          }),
        ],
      },
    ],
    grid: null,
    submit: words.say("settings.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [],
  };
  return withKeep(viewer, form, { form: DRAFT, studentId: "", draftId, dropped });
}

/** Keeps the settings of the own academy, once; the demo's stand still. Another season's start is judged beside the request. */
export function saveSettings(viewer: Viewer, data: FormData): { readonly kind: "saved" } | Refused {
  const outcome = submitOnce<{ readonly kind: "saved" }>(viewer, DRAFT, data, () => enterSettings(viewer, data));
  if (outcome.kind === "saved") void judgeSoon(viewer);
  return outcome;
}

function enterSettings(viewer: Viewer, data: FormData): { readonly kind: "saved" } | Refused {
  const { words } = viewer;
  const errors = academyErrors(words, "settings", data);
  const seasonStart = textOf(data, "seasonStart");
  if (seasonStart !== "" && !isCalendarDay(seasonStart)) errors.seasonStart = words.say("settings.bad-day");
  if (viewer.academy.kind === "demo") errors.name = words.say("settings.demo");
  if (Object.keys(errors).length > 0)
    return { kind: "refused", draftId: keepFormDraft(viewer, DRAFT, data, errors, words.say("settings.refusal")) };
  updateAcademy(viewer.db, viewer.scope, {
    name: textOf(data, "name"),
    ownerName: textOf(data, "ownerName"),
    zone: textOf(data, "zone"),
    seasonStart: seasonStart === "" ? SINCE_EVER : seasonStart,
  });
  return { kind: "saved" };
}
