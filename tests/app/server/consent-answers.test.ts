import { expect, it } from "vitest";
import { withConsentBy } from "@/app/_server/import/consent-answers";

it("stands beside every answer that takes somebody in, and beside no other", () => {
  const answers = [
    ["answer:student:nia", "new-right"],
    ["answer:student:leo", "is-s2"],
    ["answer:student:bo", "leave-out"],
    ["answer:consent:s4", "on-paper"],
    ["answer:map:1", "new-right"],
  ] as const;
  expect(withConsentBy(answers, "mother").slice(answers.length)).toEqual([
    ["answer-givenBy:student:nia", "mother"],
    ["answer-givenBy:consent:s4", "mother"],
  ]);
});

it("what was said of one student holds before it, and nobody is nobody", () => {
  const said = [
    ["answer:student:nia", "new-right"],
    ["answer-givenBy:student:nia", "father"],
  ] as const;
  expect(withConsentBy(said, "mother")).toEqual(said);
  expect(withConsentBy(said.slice(0, 1), "  ")).toEqual(said.slice(0, 1));
});
