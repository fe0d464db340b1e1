import { describe, expect, it } from "vitest";
import { BUILT_IN, findFundamental, isBuiltInId, orderedFundamentals } from "@/lib/domain/catalogue";
import { CLUB_KINDS } from "@/lib/domain/club-group";
import type { Fundamental } from "@/lib/domain/fundamental";

const byId = (id: string) => {
  const found = BUILT_IN.find((entry) => entry.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};

describe("trade facts (all: common practice, no source)", () => {
  it.each([
    ["hinge", "iron", 85, 95],
    ["trail-v", "iron", 30, 80],
    ["lead-v", "driver", 40, 100],
    ["setup-tilt", "iron", 3, 10],
    ["setup-tilt", "hybrid", 4, 12],
    ["setup-tilt", "driver", 5, 14],
    ["foot-line", "iron", -3, 4],
    ["ball-position", "short-iron", 45, 60],
    ["ball-position", "iron", 50, 65],
    ["ball-position", "hybrid", 60, 80],
    ["ball-position", "wood", 70, 90],
    ["ball-position", "driver", 85, 100],
    ["shaft-line", "iron", -5, 5],
    ["top-tilt", "iron", 2, null],
    ["tilt-kept", "iron", -3, 8],
    ["hip-sway", "iron", -5, 8],
    ["head-drift", "iron", -5, 15],
    ["impact-tilt", "iron", 8, 25],
    ["hip-shift", "iron", -25, -8],
    ["shaft-lean", "iron", 3, 12],
    ["shaft-lean", "driver", -3, 4],
  ] as const)("%s with %s: goal %s to %s", (id, club, low, high) => {
    expect(byId(id).goals[club]).toEqual({ low, high });
  });

  it("the hinge band is symmetric about square, so reading the hinge or its inner angle passes the same stills", () => {
    const { low, high } = byId("hinge").goals.iron;
    expect(180 - (low ?? 0)).toBe(high);
  });

  it("head covers the hands at club parallel: shaft line 0 is inside; tilt kept 0 is inside", () => {
    for (const id of ["shaft-line", "tilt-kept"]) {
      const { low, high } = byId(id).goals.iron;
      expect((low ?? 0) < 0 && 0 < (high ?? 0)).toBe(true);
    }
  });

  it("a reverse pivot is plus sway with minus tilt kept: 12 % and -6 degrees lie outside on those sides", () => {
    expect(12).toBeGreaterThan(byId("hip-sway").goals.iron.high ?? Number.POSITIVE_INFINITY);
    expect(-6).toBeLessThan(byId("tilt-kept").goals.iron.low ?? Number.NEGATIVE_INFINITY);
  });
});

describe("camera sds follow from the sensitivities (projection geometry, derived)", () => {
  it.each([
    ["setup-tilt", Math.hypot(0.7 * 4, 1), 3],
    ["top-tilt", Math.hypot(0.7 * 4, 1), 3],
    ["hinge", 0.7 * 4, 3],
    ["foot-line", (Math.atan(15 / 400) * 180) / Math.PI, 2.5],
    ["tilt-kept", 0.12 * 4, 0.7],
  ] as const)(
    "%s: yaw sd 4 and roll sd 1 degree, offset sd 15 cm at 4 m give %d, default %d",
    (id, derived, stated) => {
      expect(byId(id).cameraSdUnknown).toBe(stated);
      expect(Math.abs(derived - stated)).toBeLessThan(0.4);
    },
  );
});

describe("order and shape", () => {
  it("set-up comes before the swing, the grip before anything", () => {
    expect(BUILT_IN.map((entry) => entry.id).slice(0, 3)).toEqual(["trail-v", "lead-v", "foot-line"]);
    const phases = BUILT_IN.map((entry) => ["before-swing", "in-swing", "impact"].indexOf(entry.phase));
    expect(phases).toEqual([...phases].sort());
  });

  it("every entry is whole: bands for every club, plausible range around every band, errors above zero", () => {
    for (const entry of BUILT_IN) {
      expect(entry.readerSd).toBeGreaterThan(0);
      expect(entry.cameraSdUnknown).toBeGreaterThan(0);
      for (const club of CLUB_KINDS) {
        const { low, high } = entry.goals[club];
        if (low !== null) expect(low).toBeGreaterThanOrEqual(entry.plausible.low);
        if (high !== null) expect(high).toBeLessThanOrEqual(entry.plausible.high);
      }
    }
  });

  it("an own fundamental stands in its place of the order; a built-in id can't be taken over", () => {
    const own: Fundamental = { ...byId("hip-sway"), id: "own-heel", ownName: "Heel", order: 135 };
    const ids = orderedFundamentals([own]).map((entry) => entry.id);
    expect(ids[ids.indexOf("hip-sway") + 1]).toBe("own-heel");
    expect(findFundamental("own-heel", [own])).toBe(own);
    expect(findFundamental("own-other", [own])).toBeUndefined();
    expect(isBuiltInId("hinge")).toBe(true);
    expect(isBuiltInId("own-heel")).toBe(false);
  });
});
