import { expect, it } from "vitest";
import { buildFamilyStory } from "@/lib/report/family-story";
import { correctionsIn, tellPieces } from "@/lib/report/tell-pieces";
import { wordsFor } from "@/lib/words/catalogue";
import { madeTelling } from "./made-telling";
import { fundamentalOf, SAID, storySource, storyTrack, TODAY } from "./story-cases";

const words = wordsFor("en");

it("the sentences of a telling have keys that stay, in their order, and only a stop may not be left out", () => {
  const telling = madeTelling();
  const pieces = tellPieces(words, telling);
  expect(pieces.map(({ key }) => key).filter((key) => !key.startsWith("rest"))).toEqual([
    ...["good", "changed-1", "task", "filming"],
  ]);
  expect(pieces.find(({ key }) => key === "task")?.text).toMatch(/ Lay two sticks\.$/);
  expect(pieces.every(({ may }) => may === "leave")).toBe(true);
  const stopped = tellPieces(words, madeTelling({ stopped: "yes", taskLines: [], filming: "" }));
  expect(stopped.filter(({ may }) => may === "stay").map(({ key }) => key)).toEqual(["task"]);
});

it("what takes something back is counted and may not be left out", () => {
  const findings = [
    { fundamentalId: "foot-line", kind: "changed", said: "better", change: { from: "2026-04-01", to: "2026-05-01" } },
  ] as const;
  const told = [
    {
      ...({ id: "t", clubGroup: "iron", kind: "message", text: "", findings, day: "2026-08-01", who: "Bo" } as const),
      ...{ recordedAt: "2026-08-01T10:00:00.000Z", voidedAt: null },
    },
  ];
  const open = SAID["open, taken back"];
  if (open === undefined) throw new Error("no such case");
  const tracks = [storyTrack(fundamentalOf("foot-line"), open)];
  const source = storySource({ tracks, told, today: TODAY });
  const telling = madeTelling({ source, told, story: buildFamilyStory(words, source) });
  expect(correctionsIn(words, telling)).toBe(1);
  const [first] = tellPieces(words, telling).filter(({ key }) => key.startsWith("changed"));
  expect(first?.may).toBe("stay");
  expect(first?.text).toMatch(/^On 1 August we said that .* so we take that back\.$/);
});
