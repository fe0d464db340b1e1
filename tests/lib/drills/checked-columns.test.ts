import { describe, expect, it } from "vitest";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import { compareDrills } from "@/lib/drills/compare-drills";
import { POLICY } from "@/lib/verdict/policy";
import { ACADEMIES, drawAcademy } from "@/tests/calibration/drills-population";
import { seededChances } from "@/tests/lib/stats/seeded-normals";

const [plain] = ACADEMIES;
if (plain === undefined) throw new RangeError("no academy");
const academy = drawAcademy({ ...plain, students: 200 }, 31);

/** The track with so much added to every swing from the start of its drill or wait. */
function shifted(track: ComparedTrack, by: number): ComparedTrack {
  const start = track.drills[0]?.start ?? track.waiting?.[0]?.from ?? "9999-12-31";
  const sessions = track.sessions.map((session) =>
    session.date < start ? session : { ...session, swings: session.swings.map((swing) => swing + by) },
  );
  return { ...track, sessions };
}

describe("practice logged", () => {
  const chance = seededChances(8);
  const logged = academy.map((track) => {
    const minutes = Math.round(chance() * 600);
    const drills = track.drills.map((drill) => ({ ...drill, dose: { minutes, days: 10 } }));
    return { track: { ...track, drills }, minutes };
  });

  it("an hour is worth 1 where every hour adds 1, within the interval, which leaves out nothing", () => {
    const tracks = logged.map(({ track, minutes }) => shifted(track, track.drills.length > 0 ? minutes / 60 : 0));
    const found = compareDrills(tracks, POLICY).perHour;
    expect(found?.effect.low95).toBeGreaterThan(0);
    expect(found?.effect.low95).toBeLessThan(1);
    expect(found?.effect.high95).toBeGreaterThan(1);
  });
  it("nothing where hours add nothing; not said where fewer than ten log", () => {
    const found = compareDrills(
      logged.map(({ track }) => track),
      POLICY,
    ).perHour;
    expect(found?.effect.low95).toBeLessThan(0);
    expect(found?.effect.high95).toBeGreaterThan(0);
    expect(compareDrills(academy, POLICY).perHour).toBeNull();
  });
});

describe("age and hand", () => {
  it("are measured beside the drills: a year that takes .5 and a left hand that gives 3 are found, and drills stay put", () => {
    const chance = seededChances(9);
    const tracks = academy.map((track) => {
      const ageYears = 10 + Math.floor(chance() * 40);
      const handedness = chance() < 0.3 ? ("left" as const) : ("right" as const);
      return { ...shifted(track, -0.5 * ageYears + (handedness === "left" ? 3 : 0)), ageYears, handedness };
    });
    const found = compareDrills(tracks, POLICY);
    const before = compareDrills(academy, POLICY);
    expect(found.perYear?.low95).toBeLessThan(-0.5);
    expect(found.perYear?.high95).toBeGreaterThan(-0.5);
    expect(found.perYear?.high95).toBeLessThan(0);
    expect(found.leftHanded?.low95).toBeLessThan(3);
    expect(found.leftHanded?.high95).toBeGreaterThan(3);
    for (const { drill, withAgeAndHand } of found.sensitivity) {
      const own = before.drills.find((result) => result.drill === drill)?.effect;
      expect(withAgeAndHand).toBeGreaterThan(own?.low95 ?? Number.NaN);
      expect(withAgeAndHand).toBeLessThan(own?.high95 ?? Number.NaN);
    }
    expect(before.perYear).toBeNull();
  });
});

describe("the share inside the band", () => {
  it("goes up where a drill lifts its students into it, and is null without a goal", () => {
    const goal = { low: 6, high: null };
    const lifted = academy.map((track) => ({ ...shifted(track, track.drills[0]?.drill === "d0" ? 8 : 0), goal }));
    const found = compareDrills(lifted, POLICY).drills.find(({ drill }) => drill === "d0");
    expect(found?.bandShare?.low95).toBeGreaterThan(0);
    expect(found?.bandShare?.high95).toBeLessThanOrEqual(1);
    expect(compareDrills(academy, POLICY).drills.every(({ bandShare }) => bandShare === null)).toBe(true);
  });
});
