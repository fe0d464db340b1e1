import { expect, it } from "vitest";
import { parseDepartureForm } from "@/lib/ingest/parse-departure-form";

function read(departedOn: string) {
  const data = new FormData();
  data.set("departedOn", departedOn);
  return parseDepartureForm(data, { today: "2026-09-12", birthYear: 2014 });
}

it.each([
  ["2026-09-12", "2026-09-12"],
  ["", null],
  [" 2025-01-01 ", "2025-01-01"],
])("%j is kept as %s", (typed, departedOn) => expect(read(typed)).toEqual({ kind: "ok", value: { departedOn } }));

it.each([
  ["2026-09-13", "future-date"],
  ["2026-02-30", "not-a-date"],
  ["last week", "not-a-date"],
  ["2013-12-31", "before-birth"],
])("%j is refused as %s", (typed, code) => expect(read(typed)).toMatchObject({ issues: [{ code }] }));
