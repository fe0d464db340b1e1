import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { FELT } from "@/lib/domain/practice";
import { PAIN_PLACES } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { familyKeep } from "./family-keep";
import type { FamilyLogSource } from "./family-log-source";
import type { FamilyPractice } from "./family-practice-model";
import { familyTap } from "./family-tap";
import { familyWeek } from "./family-week";
import type { FieldModel } from "./form-model";

function sayRefusal(words: Words, typed: FamilyLogSource["typed"]): string {
  if (typed === null || typed.form === "tap") return "";
  if (typed.pain === "none") return words.say("family.log.refusal");
  return words.say("family.log.refusal.hurts", { why: Object.values(typed.errors).join(" ") });
}

function placeField(words: Words): FieldModel {
  return {
    ...{ name: "place", kind: "select", label: words.say("family.log.place"), hint: "", required: "no" },
    ...{ value: "", error: "" },
    options: [
      { value: "", label: words.say("family.log.place.none") },
      ...PAIN_PLACES.map((place) => ({ value: place, label: words.say(`happen.place.${place}`) })),
    ],
  };
}

function logForm(words: Words, source: FamilyLogSource): FamilyPractice["form"] {
  const { alias, pageId, today, key } = source;
  const typed = source.typed?.form === "exact" ? source.typed : null;
  const field = (name: string, spec: Pick<FieldModel, "kind"> & Partial<FieldModel>): FieldModel => ({
    label: words.say(`family.log.${name}`),
    ...{ hint: "", options: [], required: "no", ...spec, name },
    value: typed?.values[name] ?? spec.value ?? "",
    error: typed?.errors[name] ?? "",
  });
  const option = (name: string, value: string, said = value) => ({
    value,
    label: words.say(`family.log.${name}.${said}`),
  });
  const onDay = (value: string, said: string) => ({
    value,
    label: words.say(`family.log.day.${said}`, { day: sayDay(words, value, "with-weekday") }),
  });
  const yesterday = dayFromNumber(dayNumber(today) - 1);
  return {
    more: words.say("family.log.more"),
    // What comes back is seen, and while practice rests this is the only form.
    open: typed !== null || source.practice === "rests" ? "open" : "shut",
    action: `/api/family/${pageId}/practice`,
    refusal: sayRefusal(words, typed),
    fields: [
      field("day", {
        kind: "radio",
        value: today,
        options: [onDay(today, "today"), onDay(yesterday, "yesterday")],
      }),
      field("minutes", { kind: "number" }),
      field("balls", { kind: "number", hint: words.say("family.log.balls.hint") }),
      field("felt", { kind: "radio", options: FELT.map((felt) => option("felt", felt)) }),
      field("hurts", { kind: "radio", required: "yes", options: [option("hurts", "no"), option("hurts", "yes")] }),
      field("place", placeField(words)),
    ],
    hidden: [{ name: "key", value: key }],
    submit: words.say("family.log.submit", { alias }),
  };
}

/** The last days of practice, the buttons that write today's down, and the form for today or yesterday. */
export function buildFamilyPractice(words: Words, source: FamilyLogSource): FamilyPractice {
  return {
    ...familyWeek(words, source),
    ...familyTap(words, source, placeField(words)),
    form: logForm(words, source),
    keep: familyKeep(words, source),
  };
}
