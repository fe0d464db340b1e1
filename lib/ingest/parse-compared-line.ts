import { z } from "zod";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import { HANDS } from "@/lib/domain/handedness";
import { type LineOutcome, parseJsonLine, wrong } from "./json-line";
import { fromZero, optional, text, track, withGoal } from "./parse-track-line";

const day = text.refine(isCalendarDay, "not-day");
const filled = text.refine((value) => value.trim() !== "", "missing");

const drill = z
  .object(
    {
      drill: filled,
      start: day,
      end: optional(day),
      dose: optional(z.object({ minutes: fromZero, days: fromZero }, wrong("not-object"))),
      assigned: optional(z.enum(["choice", "chance"], wrong("not-assigned"))),
    },
    wrong("not-object"),
  )
  .refine(({ start, end }) => end === undefined || start <= end, { message: "ends-before", path: ["end"] });

const waiting = z
  .object({ from: day, to: day }, wrong("not-object"))
  .refine(({ from, to }) => from <= to, { message: "ends-before", path: ["to"] });

const compared = track.extend({
  student: filled,
  coach: filled,
  ageYears: optional(fromZero),
  handedness: optional(z.enum(HANDS, wrong("not-hand"))),
  drills: z.array(drill, wrong("not-list")),
  waiting: optional(z.array(waiting, wrong("not-list"))),
});

/** Reads one line of the comparison's input: a judged track with its student, coach and drills, or what is wrong and where. */
export function parseComparedLine(line: string): LineOutcome<ComparedTrack> {
  const outcome = parseJsonLine(line, compared, "id");
  return outcome.kind === "issue" ? outcome : { kind: "ok", value: withGoal(outcome.value) };
}
