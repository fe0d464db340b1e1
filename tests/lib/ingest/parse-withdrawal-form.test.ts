import { expect, it } from "vitest";
import type { ConsentKind } from "@/lib/domain/consent";
import { parseWithdrawalForm } from "@/lib/ingest/parse-withdrawal-form";

function read(
  withdrawnOn: string,
  withdrawnBy: string,
  kinds: string[],
  offered: ConsentKind[] = ["measure", "share"],
) {
  const data = new FormData();
  data.set("withdrawnOn", withdrawnOn);
  data.set("withdrawnBy", withdrawnBy);
  for (const kind of kinds) data.append("kinds", kind);
  return parseWithdrawalForm(data, { today: "2026-09-12", offered });
}

it("is a day, who said so, and what for", () =>
  expect(read("2026-09-10", " father ", ["share", "measure"])).toEqual({
    kind: "ok",
    value: { kinds: ["measure", "share"], withdrawnOn: "2026-09-10", withdrawnBy: "father" },
  }));

it.each<[string, ReturnType<typeof read>, string, string]>([
  ["nothing ticked", read("2026-09-10", "father", []), "kinds", "consent-none-ticked"],
  ["what isn't there to withdraw", read("2026-09-10", "father", ["share"], ["measure"]), "kinds", "not-a-choice"],
  ["no day", read("", "father", ["share"]), "withdrawnOn", "not-a-date"],
  ["tomorrow", read("2026-09-13", "father", ["share"]), "withdrawnOn", "future-date"],
  ["nobody", read("2026-09-12", "", ["share"]), "withdrawnBy", "missing"],
])("%s is refused", (_, outcome, field, code) => {
  if (outcome.kind !== "issues") throw new Error("taken");
  expect(outcome.issues.map((issue) => [issue.field, issue.code])).toContainEqual([field, code]);
});
