import { describe, expect, it } from "vitest";
import { parseOwningForm } from "@/lib/ingest/parse-owning-form";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const context = {
  bounds: { sessions: [1, 40], spanDays: [0, 1000], restDays: [0, 1000], share: [0, 100], shareLow: [0, 100] },
  earliest: "2026-09-12",
  latest: "2027-09-13",
  standing: { sessions: 3, spanDays: 21, restDays: 7, share: 0.7, shareLow: 0.55 },
} as const;
const good = {
  ...{ sessions: "4", spanDays: "28", restDays: "10", share: "80", shareLow: "60" },
  ...{ from: "2026-09-12", why: "a longer look" },
};
function read(more: Readonly<Record<string, string>>) {
  const data = new FormData();
  for (const [name, value] of Object.entries({ ...good, ...more })) data.set(name, value);
  return parseOwningForm(data, context);
}

describe("an owning rule's form (real FormData)", () => {
  it("whole numbers, shares in hundredths", () =>
    expect(read({})).toEqual({
      kind: "ok",
      value: {
        rule: { from: "2026-09-12", sessions: 4, spanDays: 28, restDays: 10, share: 0.8, shareLow: 0.6 },
        why: "a longer look",
      },
    }));

  it.each([
    ["no film at all", { sessions: "0" }, "sessions not-a-count"],
    ["more films than the policy bears", { sessions: "41" }, "sessions not-a-count"],
    ["half a film", { sessions: "2.5" }, "sessions not-a-count"],
    ["an empty field", { spanDays: "" }, "spanDays missing"],
    ["a minus", { restDays: "-1" }, "restDays not-a-count"],
    ["101 of 100", { share: "101" }, "share not-a-count"],
    ["more with doubt than without", { shareLow: "81" }, "shareLow owning-share-order"],
    [
      "the same again",
      { sessions: "3", spanDays: "21", restDays: "7", share: "70", shareLow: "55" },
      "sessions owning-same",
    ],
    ["yesterday", { from: "2026-09-11" }, "from owning-too-early"],
    ["years ahead", { from: "2028-01-01" }, "from too-far-ahead"],
    ["no day", { from: "31.12." }, "from not-a-date"],
    ["no reason", { why: "" }, "why missing"],
    ["a reason that hides something", { why: "a\u202eb" }, "why hidden-mark"],
  ])("refuses %s, in words", (_name, more, issue) => {
    const outcome = read(more);
    if (outcome.kind === "ok") throw new Error("taken");
    expect(outcome.issues.map(({ field, code }) => `${field} ${code}`)).toEqual([issue]);
    for (const { code, args } of outcome.issues) expect(words.say(`form.issue.${code}`, args)).not.toBe("");
  });
});
