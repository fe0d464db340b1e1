import { expect, it } from "vitest";
import type { Consent } from "@/lib/domain/consent";
import { withdrawable } from "@/lib/domain/withdrawable";

const one: Consent = {
  ...{ kind: "measure", givenBy: "mother", giverIs: "guardian" },
  ...{ from: "2026-03-01", until: "2026-12-31", withdrawnOn: null },
};

it.each<[string, Consent, string, number]>([
  ["in force", one, "2026-06-01", 1],
  ["on its last day", one, "2026-12-31", 1],
  ["after its last day", one, "2027-01-01", 0],
  ["without an end", { ...one, until: null }, "2040-01-01", 1],
  ["to begin later", one, "2026-01-01", 1],
  ["withdrawn before", { ...one, withdrawnOn: "2026-05-01" }, "2026-06-01", 0],
])("%s", (_, consent, day, count) => expect(withdrawable([consent], day)).toHaveLength(count));
