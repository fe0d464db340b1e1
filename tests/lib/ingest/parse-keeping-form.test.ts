import { expect, it } from "vitest";
import { parseKeepingForm } from "@/lib/ingest/parse-keeping-form";

const good = { keepMonths: "24", linkDays: "180", ownConsentAge: "16" };

function read(change: Readonly<Record<string, string>>) {
  const data = new FormData();
  for (const [name, value] of Object.entries({ ...good, ...change })) data.set(name, value);
  return parseKeepingForm(data);
}

it("is three numbers", () =>
  expect(read({})).toEqual({ kind: "ok", value: { keepMonths: 24, linkDays: 180, ownConsentAge: 16 } }));

it.each([
  [{ keepMonths: "1" }, "ok"],
  [{ keepMonths: "120" }, "ok"],
  [{ ownConsentAge: "13" }, "ok"],
  [{ ownConsentAge: "18" }, "ok"],
  [{ linkDays: "366" }, "ok"],
  [{ keepMonths: "0" }, "keepMonths"],
  [{ keepMonths: "121" }, "keepMonths"],
  [{ keepMonths: "" }, "keepMonths"],
  [{ keepMonths: "1e2" }, "keepMonths"],
  [{ keepMonths: "-3" }, "keepMonths"],
  [{ linkDays: "367" }, "linkDays"],
  [{ linkDays: "18０" }, "linkDays"],
  [{ ownConsentAge: "12" }, "ownConsentAge"],
  [{ ownConsentAge: "19" }, "ownConsentAge"],
  [{ ownConsentAge: "16.5" }, "ownConsentAge"],
])("%j: %s", (change, field) => {
  const outcome = read(change as unknown as Readonly<Record<string, string>>);
  expect(outcome.kind === "ok" ? "ok" : outcome.issues[0]?.field).toBe(field);
});
