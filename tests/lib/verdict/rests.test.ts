import { expect, it } from "vitest";
import type { OwnedWatch, Verdict } from "@/lib/domain/track-verdict";
import { rests } from "@/lib/verdict/rests";

const owned = { verdict: "steady", listed: false, ownedSince: "2031-01-01", watch: null } as const;

it.each<[Verdict, boolean, boolean]>([
  ["steady", false, true],
  ["gain", true, true],
  ["gain", false, false],
  ["slip", false, false],
  ["open", false, false],
  ["open", true, false],
])("owned, %s, listed %s: rests %s", (verdict, listed, answer) =>
  expect(rests({ ...owned, verdict, listed })).toBe(answer),
);

it("what isn't owned never rests, nor what an alarm is raised over", () => {
  expect(rests({ ...owned, ownedSince: null })).toBe(false);
  expect(rests({ ...owned, watch: {} as OwnedWatch })).toBe(false);
});
