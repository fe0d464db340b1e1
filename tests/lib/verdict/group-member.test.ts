import { describe, expect, it } from "vitest";
import { groupJump } from "@/lib/verdict/group-jump";
import { groupMember } from "@/lib/verdict/group-member";
import { type StudentRecord, trackHistories } from "@/lib/verdict/track-history";
import { filmedRecord, SQUARE_FILMS } from "./filmed-record";

/** Six square films and a seventh that was filmed as a group. */
function asGroup(yaw: number): StudentRecord {
  const record = filmedRecord([...SQUARE_FILMS, { yaw }]);
  return { ...record, sessions: record.sessions.map((each, at) => (at === 6 ? { ...each, groupId: "g" } : each)) };
}
const memberOf = (record: StudentRecord, view: "face-on" | "down-the-line" = "face-on") =>
  groupMember(record, trackHistories(record, "2027-01-01"), "g", view);

describe("a student's part of a group session", () => {
  it("is that session and the counting ones before it, of that view", () => {
    const member = memberOf(asGroup(0));
    expect(member?.session.id).toBe("f6");
    expect(member?.earlier.map((each) => each.id)).toEqual(["f0", "f1", "f2", "f3", "f4", "f5"]);
    expect(member?.session.fundamentals.map((each) => each.fundamental.id)).toContain("hinge");
  });

  it("counts also where the own fundamentals set it aside for the phone", () => {
    const member = memberOf(asGroup(14));
    expect(member?.session.fundamentals.map((each) => each.fundamental.id)).toContain("setup-tilt");
    expect(
      groupJump(
        "face-on",
        Array.from({ length: 4 }, () => member ?? never()),
      )?.offBy,
    ).toBeGreaterThan(10);
  });

  it("is none without a session of that group, in another view, or set aside by the coach", () => {
    expect(memberOf(filmedRecord(SQUARE_FILMS))).toBeNull();
    expect(memberOf(asGroup(0), "down-the-line")).toBeNull();
    const aside = asGroup(0);
    const sessions = aside.sessions.map((each) => (each.groupId ? { ...each, setAsideReason: "wind" } : each));
    expect(memberOf({ ...aside, sessions })).toBeNull();
  });
});

function never(): never {
  throw new Error("no member");
}
