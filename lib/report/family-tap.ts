import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { FamilyLogSource } from "./family-log-source";
import type { FamilyPractice } from "./family-practice-model";
import type { FieldModel } from "./form-model";
import { tapMinutes } from "./tap-minutes";

function sayRefusal(words: Words, { typed }: FamilyLogSource): string {
  if (typed === null || typed.form !== "tap") return "";
  const { day, ...others } = typed.errors;
  const why = day === undefined ? Object.values(others) : [words.say("family.tap.stale"), ...Object.values(others)];
  return typed.pain === "saved"
    ? words.say("family.log.refusal.hurts", { why: why.join(" ") })
    : [...new Set(why)].join(" ");
}

/**
 * The buttons with minutes, of one form with the answer to "does something hurt?", which has none beforehand. None are offered
 * while practice rests.
 *
 * @param place the list of places, as the form below has it
 */
export function familyTap(
  words: Words,
  source: FamilyLogSource,
  place: FieldModel,
): Pick<FamilyPractice, "tap" | "rests"> {
  const { alias, pageId, today, key, practice } = source;
  if (practice === "rests") return { tap: null, rests: words.say("family.tap.rests") };
  const hidden = Object.entries({ key, day: today, tap: "yes" });
  return {
    rests: "",
    tap: {
      action: `/api/family/${pageId}/practice`,
      hidden: hidden.map(([name, value]) => ({ name, value })),
      refusal: sayRefusal(words, source),
      hurts: {
        ...{ name: "hurts", kind: "radio", label: words.say("family.log.hurts"), hint: "", value: "", error: "" },
        required: "yes",
        options: ["no", "yes"].map((value) => ({ value, label: words.say(`family.log.hurts.${value}`) })),
      },
      day: words.say("family.tap.today", { day: sayDay(words, today, "with-weekday") }),
      buttons: tapMinutes(source.minutes).map((minutes) => ({
        value: String(minutes),
        said: words.say("family.tap.minutes", { minutes }),
        whom: words.say("family.tap.whom", { alias }),
      })),
      stop: {
        heading: words.say("family.stop.heading"),
        lines: ["family.tap.stop", "family.pain.grown-ups"].map((line) => words.say(line)),
        place: { ...place, label: words.say("family.tap.where"), value: "", error: "" },
        submit: words.say("family.tap.tell", { alias }),
      },
    },
  };
}
