import { expect, it } from "vitest";
import { workStop } from "@/lib/verdict/work-stop";

const today = "2031-05-10";
const event = (kind: "injury" | "pause" | "break", day: string, endDay: string | null = null) => ({
  kind,
  day,
  endDay,
});

it("stops for pain that stands, from the latest day on which it was said, whatever the pauses are", () => {
  const said = [{ day: "2031-05-08" }, { day: "2031-05-03" }];
  expect(workStop({ said, events: [event("pause", "2031-05-01")] }, today)).toEqual({
    ...{ kind: "pain", since: "2031-05-08", until: null },
  });
});

it("stops for a pause in whose days today lies, its last day counted in", () => {
  const stopOf = (day: string, end: string | null) => workStop({ said: [], events: [event("pause", day, end)] }, today);
  expect(stopOf("2031-05-01", today)).toEqual({ kind: "pause", since: "2031-05-01", until: today });
  expect(stopOf("2031-05-01", null)).toEqual({ kind: "pause", since: "2031-05-01", until: null });
  expect(stopOf("2031-05-01", "2031-05-09")).toBeNull();
  expect(stopOf("2031-05-11", null)).toBeNull();
});

it("calls it pain only where the event does, which whoever may not know it is never handed", () => {
  const events = [event("pause", "2031-05-01"), event("injury", "2031-05-04")];
  expect(workStop({ said: [], events }, today)).toMatchObject({ kind: "pain", since: "2031-05-04" });
});

it("never stops for a break", () => {
  expect(workStop({ said: [], events: [event("break", "2031-05-01")] }, today)).toBeNull();
});
