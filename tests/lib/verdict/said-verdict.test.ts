import { expect, it } from "vitest";
import type { Verdict } from "@/lib/domain/track-verdict";
import { saidVerdict } from "@/lib/verdict/said-verdict";

it.each<[Verdict, boolean | undefined, Verdict]>([
  ["gain", true, "gain"],
  ["gain", false, "open"],
  ["slip", true, "slip"],
  ["slip", undefined, "open"],
  ["steady", undefined, "steady"],
  ["open", true, "open"],
])("%s, listed %s, is said as %s", (verdict, listed, said) => {
  expect(saidVerdict(listed === undefined ? { verdict } : { verdict, listed })).toBe(said);
});
