import { describe, expect, it } from "vitest";
import type { FamilySource } from "@/lib/report/family-source";
import { familyWork } from "@/lib/report/family-work";
import { wordsFor } from "@/lib/words/catalogue";
import { FAMILY_SOURCE, practised } from "./family-fixture";

const words = wordsFor("en");
const page = (over: Partial<FamilySource>) => familyWork(words, { ...FAMILY_SOURCE, ...over });

describe("the task and the stop", () => {
  it("stops while the coach has noted a pause, without a button that says it is over", () => {
    const pause = { id: "e", kind: "injury", day: "2026-09-01", note: "", place: "back", rebaselines: [] } as const;
    const stopped = page({ events: [{ ...pause, endDay: null }] });
    expect([stopped.task, stopped.stop?.over]).toEqual([null, null]);
    expect(stopped.stop?.lines[0]).toBe("Practice is on hold for now. Your coach has noted it.");
    expect(page({ events: [{ ...pause, endDay: "2026-09-11" }] }).stop).toBeNull();
    expect(page({ events: [{ ...pause, endDay: "2026-09-12" }] }).stop).not.toBeNull();
    expect(page({ events: [{ ...pause, day: "2026-09-13", endDay: null }] }).stop).toBeNull();
  });

  it("puts the stop in the task's place as soon as pain was told, and leaves out what the task doesn't say", () => {
    const task = { drill: "Rails", how: "Lay two sticks.", dose: "", cautions: "" };
    expect(page({ task }).task?.lines).toEqual(["Lay two sticks.", words.say("family.task.missed")]);
    const hurt = page({ task, practice: [practised("2026-09-12", { minutes: null, pain: "knee" })] });
    expect(hurt.task).toBeNull();
    expect(hurt.stop?.over?.hidden).toEqual([{ name: "hurts", value: "over" }]);
  });
});
