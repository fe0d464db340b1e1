import { expect, it } from "vitest";
import { familyLinkState } from "@/lib/domain/family-link";

it("a link is open until seven days before its end, ending until its last millisecond, and ended from then on", () => {
  const expiresAt = "2026-09-30T12:00:00.000Z";
  const at = (now: string) => familyLinkState({ expiresAt, revokedAt: null }, now);
  expect(at("2026-01-01T00:00:00.000Z")).toBe("open");
  expect(at("2026-09-23T11:59:59.999Z")).toBe("open");
  expect(at("2026-09-23T12:00:00.000Z")).toBe("ending");
  expect(at("2026-09-30T11:59:59.999Z")).toBe("ending");
  expect(at("2026-09-30T12:00:00.000Z")).toBe("ended");
});

it("taken back it is revoked whatever its end", () => {
  const link = { expiresAt: "2026-09-30T12:00:00.000Z", revokedAt: "2026-09-01T00:00:00.000Z" };
  expect(
    ["2026-08-01", "2026-09-29", "2027-01-01"].map((day) => familyLinkState(link, `${day}T00:00:00.000Z`)),
  ).toEqual(["revoked", "revoked", "revoked"]);
});
