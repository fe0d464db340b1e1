import { expect, test } from "vitest";
import { parseToldFindings, type ToldFinding, toldFindingsText } from "@/lib/domain/told";

const better: ToldFinding = {
  ...{ fundamentalId: "hinge", kind: "changed", said: "better" },
  change: { from: "2031-01-03", to: "2031-01-09" },
};

test("what was told of changes is read back as it was kept", () => {
  const told: ToldFinding[] = [better, { fundamentalId: "hip-sway", kind: "corrected", said: "worse", change: null }];
  expect(parseToldFindings(toldFindingsText(told))).toEqual(told);
  expect(parseToldFindings(toldFindingsText([]))).toEqual([]);
});

test("what isn't whole is neither kept nor read", () => {
  expect(() => toldFindingsText([{ ...better, said: "great" as "better" }])).toThrow();
  expect(() => toldFindingsText(Array.from({ length: 61 }, () => better))).toThrow();
  expect([parseToldFindings("{}"), parseToldFindings("no"), parseToldFindings('[{"kind":"changed"}]')]).toEqual([
    null,
    null,
    null,
  ]);
});
