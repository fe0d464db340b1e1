import { describe, expect, it } from "vitest";
import { filmedSessions } from "@/lib/verdict/filmed-sessions";
import { type StudentRecord, trackHistories } from "@/lib/verdict/track-history";
import { filmedRecord, SQUARE_FILMS } from "./filmed-record";

const faceOn = (record: StudentRecord) =>
  trackHistories(record, "2027-01-01").filter((track) => track.fundamental.view === "face-on");

describe("a student's filmed sessions of one view", () => {
  const record = filmedRecord([...SQUARE_FILMS, { yaw: 0, only: ["hinge"], offBy: 6 }]);

  it("hold what counts in each session, in date order, with what the record leaves open of the phone", () => {
    const filmed = filmedSessions(record, "face-on", faceOn(record), () => true);
    expect(filmed.map((each) => each.id)).toEqual(["f0", "f1", "f2", "f3", "f4", "f5", "f6"]);
    expect(filmed.at(-1)?.fundamentals.map((each) => each.fundamental.id)).toEqual(["hinge"]);
    expect(filmed.at(-1)?.recordedOff).toBe(6);
    expect(filmed[0]?.recordedOff).toBe(0);
    expect(filmed[0]?.shiftSd).toBeGreaterThan(0);
  });

  it("leave out sessions in which nothing counts", () =>
    expect(
      filmedSessions(record, "face-on", faceOn(record), (entry) => entry.session.id !== "f3").map((each) => each.id),
    ).toEqual(["f0", "f1", "f2", "f4", "f5", "f6"]));
});
