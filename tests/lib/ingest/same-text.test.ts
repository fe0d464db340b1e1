import { expect, it } from "vitest";
import { SameText } from "@/lib/ingest/same-text";

it("gives every text back as it is, known or not, also beyond 20,000 different ones", () => {
  const same = new SameText();
  const texts = ["", " ", "7-iron", "é", "e\u0301", ...Array.from({ length: 30_000 }, (_, at) => `value ${at}`)];
  expect([...texts, ...texts].every((text) => same.text(text) === text)).toBe(true);
});
