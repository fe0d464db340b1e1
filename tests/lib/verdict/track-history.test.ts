import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { NOTHING_SEEN, type Reading, type Session } from "@/lib/domain/session";
import { type StudentRecord, trackHistories } from "@/lib/verdict/track-history";

const session = (id: string, day: string, change: Partial<Session> = {}): Session => ({
  id,
  studentId: "s",
  day,
  sequence: 1,
  clubGroup: "iron",
  club: "7-iron",
  reader: "Wren",
  circumstance: "unaided",
  aid: null,
  stanceWidthCm: null,
  daysSincePractice: null,
  marks: [],
  note: null,
  solid: null,
  balls: null,
  setAsideReason: null,
  groupId: null,
  ...change,
});
const read = (
  sessionId: string,
  fundamentalId: Reading["fundamentalId"],
  values: readonly (number | null)[],
): Reading[] =>
  values.map((value, at) => ({
    sessionId,
    swing: at + 1,
    fundamentalId,
    value,
    typed: String(value),
    signRule: "neutral",
  }));
const record = (change: Partial<StudentRecord>): StudentRecord => ({
  student: { id: "s", alias: "Ari", birthYear: 2014, hand: "right", zone: "UTC", clubs: "" },
  sessions: [],
  captures: [],
  statedCaptureSds: [],
  readings: [],
  events: [],
  bands: [],
  lookNoise: [],
  fundamentals: BUILT_IN,
  seasonStart: "0001-01-01",
  ...change,
});
const only = (given: StudentRecord, id: string, asOf = "2026-12-31") => {
  const found = trackHistories(given, asOf).filter((history) => history.fundamental.id === id);
  expect(found).toHaveLength(1);
  return found[0] as (typeof found)[number];
};

describe("what is on file becomes judged tracks", () => {
  it("irons and driver are never pooled: one track a club group", () => {
    const given = record({
      sessions: [session("a", "2026-03-01"), session("b", "2026-03-02", { clubGroup: "driver" })],
      readings: [...read("a", "hinge", [80]), ...read("b", "hinge", [70])],
    });
    expect(trackHistories(given, "2026-12-31").map((history) => history.judged.id)).toEqual([
      "s/hinge/iron",
      "s/hinge/driver",
    ]);
  });

  it("tilt kept is top less setup of the same swing: 8 - 5 = 3; a swing with one part has none; its own reading goes before", () => {
    const given = record({
      sessions: [session("a", "2026-03-01")],
      readings: [
        ...read("a", "setup-tilt", [5, 6, 7]),
        ...read("a", "top-tilt", [8, null, 9]),
        ...read("a", "tilt-kept", [null, null, 1]),
      ],
    });
    expect(only(given, "tilt-kept").judged.sessions[0]?.swings).toEqual([3, 1]);
  });

  it("not measurable is no value; a session without any value is no session of that track", () => {
    const given = record({ sessions: [session("a", "2026-03-01")], readings: read("a", "hinge", [null, null]) });
    expect(trackHistories(given, "2026-12-31")).toEqual([]);
  });

  it("aided, in a lesson and set aside keep their place and aren't used", () => {
    const given = record({
      sessions: [
        session("a", "2026-03-01"),
        session("b", "2026-03-02", { circumstance: "aid-in-view", aid: "stick" }),
        session("c", "2026-03-03", { circumstance: "in-lesson" }),
        session("d", "2026-03-04", { setAsideReason: "rain" }),
      ],
      readings: ["a", "b", "c", "d"].flatMap((id) => read(id, "hinge", [80])),
    });
    const history = only(given, "hinge");
    expect(history.judged.sessions.map((each) => each.use)).toEqual([true, false, false, false]);
    expect(history.sessions.map((each) => each.index)).toEqual([0, 1, 2, 3]);
    expect(history.sessions.map((each) => each.apart?.kind ?? null)).toEqual([
      null,
      "circumstance",
      "circumstance",
      "set-aside",
    ]);
  });

  it("no capture record carries the unknown camera sd, never zero: 3 degrees for side tilt", () => {
    const given = record({ sessions: [session("a", "2026-03-01")], readings: read("a", "setup-tilt", [5]) });
    expect(only(given, "setup-tilt").judged.sessions[0]?.captureSd).toBe(3);
  });

  it("a placement's label is its shared camera error; a stated sd wins", () => {
    const capture = {
      view: "face-on",
      placement: "same",
      placementLabel: "mat 3",
      squareness: "unknown",
      offBy: null,
      setAsideReason: null,
      seen: NOTHING_SEEN,
      placedBy: null,
      filmReference: null,
    } as const;
    const given = record({
      sessions: [session("a", "2026-03-01")],
      readings: read("a", "setup-tilt", [5]),
      captures: [{ ...capture, sessionId: "a" }],
      statedCaptureSds: [{ sessionId: "a", fundamentalId: "setup-tilt", sd: 0.8 }],
    });
    expect(only(given, "setup-tilt").judged.sessions[0]).toMatchObject({ captureSetup: "mat 3", captureSd: 0.8 });
  });

  it("a place that was looked at: 8 degrees of yaw are taken out of the leans (12.4 is 7) and nearly none out of tilt kept; readings stay as read", () => {
    const sticks = { pointingStickLean: 22.9, plumbLean: 0, lensHeightCm: 75, handsHeightCm: 75, distanceCm: 225 };
    const given = record({
      sessions: [session("a", "2026-03-01")],
      readings: [...read("a", "setup-tilt", [12.4]), ...read("a", "top-tilt", [11.5]), ...read("a", "hinge", [90])],
      captures: [
        {
          sessionId: "a",
          view: "face-on",
          placement: "anew",
          placementLabel: null,
          squareness: "unknown",
          offBy: null,
          seen: { ...NOTHING_SEEN, ...sticks },
          placedBy: "sister",
          setAsideReason: null,
          filmReference: null,
        },
      ],
    });
    const tilt = only(given, "setup-tilt").sessions[0];
    expect(tilt).toMatchObject({ captureWhy: "corrected", swings: [{ number: 1, read: 12.4 }] });
    expect(Math.abs((tilt?.swings[0]?.value ?? 0) - 7)).toBeLessThan(0.1);
    expect(tilt?.takenOut).toBeCloseTo(12.4 - (tilt?.swings[0]?.value ?? 0), 9);
    const kept = only(given, "tilt-kept").judged.sessions[0];
    expect(Math.abs((kept?.swings[0] ?? 0) - -0.9)).toBeLessThan(1.2);
    expect(kept?.captureSd).toBeLessThan((tilt?.captureSd ?? 0) * 1.2);
    expect(only(given, "hinge").sessions[0]).toMatchObject({ captureWhy: "sighted", takenOut: 0 });
  });

  it("an event that re-baselines begins the track anew: earlier sessions are drawn and forgotten", () => {
    const given = record({
      sessions: [session("a", "2026-03-01"), session("b", "2026-05-01")],
      readings: [...read("a", "posture-bend", [30]), ...read("b", "posture-bend", [40])],
      events: [{ id: "e", kind: "growth", day: "2026-04-01", note: "", rebaselines: ["posture-bend"] }],
    });
    const history = only(given, "posture-bend");
    expect(history.begins).toBe("2026-04-01");
    expect(history.judged.sessions.map((each) => each.date)).toEqual(["2026-05-01"]);
    expect(history.earlier).toBeNull();
    expect(history.sessions.map((each) => each.apart?.kind ?? null)).toEqual(["before", null]);
  });

  it("a season's border remembers the level before: the earlier sessions stay to be judged for it", () => {
    const given = record({
      seasonStart: "2026-04-01",
      sessions: [session("a", "2026-03-01"), session("b", "2026-05-01")],
      readings: [...read("a", "hinge", [70, 71]), ...read("b", "hinge", [80])],
    });
    const history = only(given, "hinge");
    expect(history.earlier?.sessions.map((each) => [each.date, each.use])).toEqual([["2026-03-01", true]]);
    expect(history.judged.sessions.map((each) => each.date)).toEqual(["2026-05-01"]);
  });

  it("sessions later than the day asked for are passed over, and so are events", () => {
    const given = record({
      sessions: [session("a", "2026-03-01"), session("b", "2026-05-01")],
      readings: [...read("a", "hinge", [70]), ...read("b", "hinge", [80])],
      events: [{ id: "e", kind: "growth", day: "2026-04-01", note: "", rebaselines: ["hinge"] }],
    });
    const history = only(given, "hinge", "2026-03-31");
    expect(history.judged.sessions.map((each) => each.date)).toEqual(["2026-03-01"]);
    expect(history.begins).toBeNull();
  });

  it("each dated goal brings its own least change worth having, a third of half its width, or 3 with one edge", () => {
    const band = { fundamentalId: "hinge", clubGroup: "iron", scope: "academy", reason: "", studentId: null } as const;
    const ages = { ageFrom: null, ageTo: null };
    const given = record({
      sessions: [session("a", "2026-03-01"), session("b", "2026-05-01")],
      readings: [...read("a", "hinge", [70]), ...read("b", "hinge", [80])],
      bands: [
        { ...band, ...ages, low: 60, high: 120, from: "2026-04-01" },
        { ...band, ...ages, low: 60, high: null, from: "2026-06-01" },
      ],
    });
    const { judged } = only(given, "hinge");
    expect(judged.goals?.map((goal) => goal.worthwhileAtLeast)).toEqual([5 / 3, 10, 3]);
    expect(judged.worthwhileAtLeast).toBe(3);
  });
});
