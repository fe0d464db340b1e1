import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { buildTellMessage, LEAVES_OUT, MESSAGE_LETTERS, type MessageSource } from "@/lib/report/tell-message";

const SOURCE: MessageSource = {
  ...{ alias: "Ari", good: "Good 5.", changed: ["Better.", "Worse."], unsure: "Not sure.", task: "Task." },
  ...{ contact: "Solid 3 of 9.", filming: "Phone left.", pain: "Stop if it hurts.", corrections: 0 },
};
const long = (letters: number): string => `${"a".repeat(letters - 1)}.`;

describe("a message to a family", () => {
  it("tells what is good, what changed, what can't be told, the task, the correction for the video, and of pain", () => {
    expect(buildTellMessage(SOURCE)).toEqual({
      text: "Ari: Good 5. Better. Worse. Solid 3 of 9. Not sure. Task. Phone left. Stop if it hurts.",
      leftOut: [],
    });
    const bare = { ...SOURCE, unsure: "", contact: "", filming: "", changed: ["Nothing so far."] };
    expect(buildTellMessage(bare).text).toBe("Ari: Good 5. Nothing so far. Task. Stop if it hurts.");
  });

  it.each([
    ["filming", { filming: long(560) }, ["filming"]],
    ["then the strikes", { task: long(535) }, ["filming", "contact"]],
    ["then what can't be told", { task: long(550) }, ["filming", "contact", "unsure"]],
    ["then what is good", { task: long(556) }, ["filming", "contact", "unsure", "good"]],
    ["then the later of the changes", { task: long(565) }, [...LEAVES_OUT]],
  ] as const)("too long, it loses whole sentences: %s", (_name, over, leftOut) => {
    const told = buildTellMessage({ ...SOURCE, ...over });
    expect(told.leftOut).toEqual(leftOut);
    expect(told.text.length).toBeLessThanOrEqual(MESSAGE_LETTERS);
    expect(told.text.includes("Better.")).toBe(true);
    expect(told.text.includes("Worse.")).toBe(!told.leftOut.includes("changed"));
  });

  it("never loses what is taken back, the task or what is said of pain", () => {
    const told = buildTellMessage({ ...SOURCE, changed: ["We take that back.", long(580)], corrections: 1 });
    expect(told).toEqual({
      text: "Ari: We take that back. Task. Stop if it hurts.",
      leftOut: [...LEAVES_OUT],
    });
  });

  it("of any sentences it is at most 600 letters where what always stays is, and every one of them is whole", () => {
    const sentence = fc.integer({ min: 0, max: 300 }).map((letters) => (letters < 2 ? "" : long(letters)));
    const sources = fc.record({
      ...{
        alias: fc.constantFrom("Ari", "A very long name indeed"),
        good: sentence,
        unsure: sentence,
        contact: sentence,
      },
      ...{ task: sentence, filming: sentence, changed: fc.array(sentence, { maxLength: 4 }) },
    });
    fc.assert(
      fc.property(sources, (made) => {
        const source = { ...made, pain: "Stop.", corrections: 0 };
        const { text } = buildTellMessage(source);
        const least = `${made.alias}: ${made.task} Stop.`.length;
        if (least <= MESSAGE_LETTERS) expect(text.length).toBeLessThanOrEqual(MESSAGE_LETTERS);
        const whole = new Set([
          ...made.changed,
          made.good,
          made.unsure,
          made.contact,
          made.task,
          made.filming,
          "Stop.",
        ]);
        for (const part of text.slice(made.alias.length + 2).match(/[^.]+\./g) ?? [])
          expect(whole.has(part.trimStart())).toBe(true);
      }),
      { seed: 8, numRuns: 400 },
    );
  });
});
