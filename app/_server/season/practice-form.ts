import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { FELT, mondayOf, PRACTICE_SOURCES } from "@/lib/domain/practice";
import type { DrillAssignment } from "@/lib/domain/student";
import type { PracticeCell, PracticeForm } from "@/lib/report/practice-form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { cameBack, type FormDraft } from "../draft/form-draft";
import { field } from "./student-form";

const WEEK = 7;

/** The days of a week that have come, latest first, so that today stands on top. */
export function weekDays(monday: string, today: string): readonly string[] {
  const first = dayNumber(monday);
  return Array.from({ length: WEEK }, (_, at) => dayFromNumber(first + WEEK - 1 - at)).filter((day) => day <= today);
}

/** What the form of a week begins with. */
export interface PracticeFormSource {
  readonly studentId: string;
  readonly monday: string;
  readonly today: string;
  readonly drills: readonly DrillAssignment[];
  readonly draft: FormDraft | null;
}

/** Drills that ran on any day of a week. */
function running(drills: readonly DrillAssignment[], monday: string): readonly DrillAssignment[] {
  const sunday = dayFromNumber(dayNumber(monday) + WEEK - 1);
  return drills.filter((drill) => drill.start <= sunday && (drill.end ?? sunday) >= monday);
}

/** The form that logs a week. */
export function buildPracticeForm(words: Words, source: PracticeFormSource): PracticeForm {
  const { monday, today, draft } = source;
  const typed = new Map(draft?.entries);
  const cell = (count: "minutes" | "balls", day: string): PracticeCell => {
    const name = `${count}.${day}`;
    const label = words.say("practice.cell", {
      count: words.say(`practice.${count}`),
      day: sayDay(words, day, "with-weekday"),
    });
    return { name, label, value: typed.get(name) ?? "", error: draft?.errors[name] ?? "" };
  };
  const drills = running(source.drills, monday);
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, "practice-form", spec);
  const none = { value: "", label: words.say("practice-form.none") };
  const to = (days: number): string => dayFromNumber(dayNumber(monday) + days);
  const week = (day: string, key: string) => ({
    href: `/students/${source.studentId}/practice?week=${day}`,
    label: words.say(key, { week: sayStretch(words, day, dayFromNumber(dayNumber(day) + WEEK - 1)) }),
  });
  return {
    margin: words.say("practice-form.heading"),
    explains: words.say("practice-form.explains"),
    caption: words.say("practice-form.caption", { week: sayStretch(words, monday, to(WEEK - 1)) }),
    columns: [words.say("practice.day"), words.say("practice.minutes"), words.say("practice.balls")],
    days: weekDays(monday, today).map((day) => ({
      label: sayDay(words, day, "with-weekday"),
      cells: [cell("minutes", day), cell("balls", day)],
    })),
    fields: [
      ...(cameBack(draft) === "no" && !typed.has("confirmMuch")
        ? []
        : [
            one({
              name: "confirmMuch",
              kind: "checkbox",
              options: [{ value: "yes", label: words.say("practice-form.confirmMuch.yes") }],
            }),
          ]),
      one({
        name: "drill",
        kind: "select",
        value: drills.length === 1 ? (drills[0]?.id ?? "") : "",
        options: [none, ...drills.map((drill) => ({ value: drill.id, label: drill.drill }))],
      }),
      one({
        name: "felt",
        kind: "select",
        options: [
          { value: "", label: words.say("practice-form.not-said") },
          ...FELT.map((felt) => ({ value: felt, label: words.say(`practice.felt.${felt}`) })),
        ],
      }),
      one({
        name: "source",
        kind: "select",
        value: "told",
        options: PRACTICE_SOURCES.map((from) => ({ value: from, label: words.say(`practice.source.${from}`) })),
      }),
    ],
    submit: words.say("practice-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [
      { name: "studentId", value: source.studentId },
      { name: "week", value: monday },
    ],
    weeks: {
      label: words.say("practice-form.weeks"),
      links: [
        week(to(-WEEK), "practice-form.earlier"),
        ...(to(WEEK) <= mondayOf(today) ? [week(to(WEEK), "practice-form.later")] : []),
      ],
    },
  };
}
