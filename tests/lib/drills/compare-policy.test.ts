import { describe, expect, it } from "vitest";
import { compareDrills } from "@/lib/drills/compare-drills";
import { COMPARE_THRESHOLDS } from "@/lib/verdict/compare-thresholds";
import { POLICY, POLICY_VERSION } from "@/lib/verdict/policy";
import { policyWith } from "@/lib/verdict/policy-with";
import { drawAcademy, STOPPED_ACADEMIES } from "@/tests/calibration/drills-population";

/** Another value of each threshold of the comparison. */
const OTHER: Readonly<Record<keyof typeof COMPARE_THRESHOLDS, number>> = {
  ...{ runSessions: 2, otherRunSessions: 1, earlierSessions: 4, afterSessions: 4 },
  ...{ retentionFrom: 40, retentionTo: 60, rested: 14 },
  ...{ waiters: 200, estimated: 15, judged: 30, shallowest: 0.5, addedDegrees: 0, falseWorks: 0.0001 },
};

const [stopped] = STOPPED_ACADEMIES;
if (stopped === undefined) throw new RangeError("no academy");
// Every other session came ten days after the last practice.
const academy = drawAcademy({ ...stopped, students: 200 }, 31).map((track) => ({
  ...track,
  sessions: track.sessions.map((session, at) => (at % 2 === 0 ? { ...session, daysSincePractice: 10 } : session)),
}));
const usual = compareDrills(academy, POLICY);

describe("the policy holds the thresholds of the comparison", () => {
  it.each(Object.entries(OTHER))(
    "%s=%d: the version says so, and the comparison comes out otherwise",
    (name, value) => {
      const changed = policyWith([`${name}=${value}`]);
      if (changed.kind !== "ok") throw new Error(JSON.stringify(changed));
      expect(changed.policy.version).toBe(`${POLICY_VERSION}+${name}=${value}`);
      expect(compareDrills(academy, changed.policy)).not.toEqual(usual);
    },
  );
  it("as they are built in, nothing comes out otherwise", () => {
    const same = policyWith(Object.entries(COMPARE_THRESHOLDS).map(([name, { value }]) => `${name}=${value}`));
    if (same.kind !== "ok") throw new Error(JSON.stringify(same));
    expect(compareDrills(academy, same.policy)).toEqual(usual);
  });
});
