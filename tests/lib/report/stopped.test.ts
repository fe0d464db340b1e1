import { expect, it } from "vitest";
import { stopped } from "@/lib/report/stopped";
import { hurts, source, student, TODAY } from "./brief-parts";

it("holds whoever's work is stopped, by pain or by a pause, and nobody of whom nothing is said", () => {
  const paused = { kind: "pause", since: TODAY, until: "2026-09-14" } as const;
  const work = { stop: null, chosenId: null, asked: new Map() };
  const given = source([
    hurts(student("s1", "Ari")),
    { ...student("s2", "Bea"), work: { ...work, stop: paused } },
    { ...student("s3", "Cal"), work },
    student("s4", "Dot"),
  ]);
  expect([...stopped(given)]).toEqual(["s1", "s2"]);
});
