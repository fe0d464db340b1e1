import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { AskPlan } from "@/app/_ui/fundamental/ask-plan";
import type { AskPlanPart } from "@/lib/report/ask-plan-model";

const options = (count: number, word: string) =>
  Array.from({ length: count }, (_, at) => ({ value: `${at + 1}`, label: `${at + 1} ${word}` }));
const part: AskPlanPart = {
  heading: "Ask about other films",
  explains: "More or fewer.",
  hidden: [{ name: "club", value: "iron" }],
  choices: [
    { name: "films", label: "Films", options: options(8, "films"), at: 2 },
    { name: "swings", label: "Swings", options: options(8, "swings"), at: 0 },
    { name: "care", label: "Phone", options: options(2, "care"), at: 1 },
  ],
  submit: "Say what these would tell",
  said: {
    plan: "3 more films:",
    facts: [{ name: "Settle it", value: "25 in 100", note: "" }],
    enough: "Not a plan.",
    takes: null,
  },
  failed: "No answer came.",
};
const draw = (model: AskPlanPart): string =>
  renderToStaticMarkup(
    createElement(AskPlan, {
      part: model,
      track: { studentId: "s", fundamentalId: "hinge", clubGroup: "iron" },
      ask: () => Promise.resolve(null),
      take: "/taken",
    }),
  );

describe("asking about films as it comes with the page", () => {
  const markup = draw(part);

  it("is a form that the address answers: three lists, each with a name and a label, and a button", () => {
    expect(markup).toMatch(/<form [^>]*method="get"/);
    for (const { name, label } of part.choices) {
      const id = new RegExp(`<label[^>]* for="([^"]+)"[^>]*>${label}<`).exec(markup)?.[1] ?? "none";
      expect(markup).toContain(`<select id="${id}" name="${name}"`);
    }
    expect(markup).toContain('<option value="3" selected="">3 films</option>');
    expect(markup).toContain('<input type="hidden" name="club" value="iron"/>');
    expect(markup).toContain("Say what these would tell");
    expect(markup).not.toContain('type="range"');
  });

  it("says the answer in the page, in a place that is read out when it changes", () => {
    expect(markup).toMatch(/<section[^>]* aria-live="polite"/);
    expect(markup).toContain("25 in 100");
    expect(markup).not.toContain(part.failed);
  });

  it("films worth asking for have a form of their own, beside and not within the other", () => {
    expect(markup.match(/<form/g)).toHaveLength(1);
    const takes = { label: "Plan these films", explains: "Counted.", hidden: [{ name: "films", value: "3" }] };
    const taken = draw({ ...part, said: { ...part.said, takes } });
    expect(taken).toMatch(/<\/form><form [^>]*method="post"/);
    expect(taken).toContain('<input type="hidden" name="films" value="3"/>');
  });
});
