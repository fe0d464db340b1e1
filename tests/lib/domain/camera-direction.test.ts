import { describe, expect, it } from "vitest";
import { cameraDirection, signedSensitivity } from "@/lib/domain/camera-direction";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";

/** A point: `away` from the target, `up`, `out` toward the ball; metres. */
type Point = readonly [away: number, up: number, out: number];
type Still = readonly [right: number, up: number];

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const FAR = 100;
const radians = (angle: number): number => (angle * Math.PI) / 180;

/**
 * Central projection, as any textbook has it, from a phone 1 m high. Facing: on the ball's side, turned toward the target
 * by `yaw` and rolled by `roll`, so far away that nearness adds nothing; still x runs away from the target. From behind:
 * 4 m away from the target, `aside` metres on the ball's side; still x runs out to the ball.
 */
function facing([away, up, out]: Point, yaw: number, roll: number): Still {
  const psi = radians(yaw);
  // Turning the golfer away by psi is the phone going toward the target by psi.
  const right = away * Math.cos(psi) + out * Math.sin(psi);
  const depth = FAR - (out * Math.cos(psi) - away * Math.sin(psi));
  const [x, y] = [right / depth, (up - 1) / depth];
  const rho = radians(roll);
  return [x * Math.cos(rho) + y * Math.sin(rho), y * Math.cos(rho) - x * Math.sin(rho)];
}
function behind([away, , out]: Point, aside: number): number {
  return (out - aside) / (4 - away);
}

const lean = (low: Still, high: Still): number => degrees(Math.atan2(high[0] - low[0], high[1] - low[1]));

/** Spine of 50 cm with a side tilt of 7 and a forward bend of 35 degrees. */
const hips: Point = [0, 1, 0];
const neck: Point = [0.5 * Math.tan(radians(7)), 1.5, 0.5 * Math.tan(radians(35))];
const tilt = (yaw: number, roll: number): number => lean(facing(hips, yaw, roll), facing(neck, yaw, roll));

/** Shaft at impact: hands ahead of the head toward the target; the head 60 cm further out. Plus: hands nearer the target. */
const shaft = (yaw: number, roll: number): number =>
  -lean(facing([0.1, 0, 0.6], yaw, roll), facing([-0.05, 0.9, 0], yaw, roll));

/** Lead arm level in the picture's plane toward the trail side, club up and leaning 35 degrees out of the plane. */
const hinge = (yaw: number): number => {
  const wrist = facing([0.2, 1.3, 0.3], yaw, 0);
  const shoulder = facing([-0.4, 1.3, 0.3], yaw, 0);
  const club = facing([0.2, 1.3 + Math.cos(radians(35)), 0.3 - Math.sin(radians(35))], yaw, 0);
  const arm = [shoulder[0] - wrist[0], shoulder[1] - wrist[1]] as const;
  const shaft = [club[0] - wrist[0], club[1] - wrist[1]] as const;
  const cosine = (arm[0] * shaft[0] + arm[1] * shaft[1]) / (Math.hypot(...arm) * Math.hypot(...shaft));
  return 180 - degrees(Math.acos(cosine));
};

/** Heels on the foot line, ball between them and 80 cm out: 0 at the trail heel, 100 at the lead heel. */
const ball = (yaw: number): number => {
  const x = (point: Point): number => facing(point, yaw, 0)[0];
  const [trail, lead] = [x([0.22, 0, 0]), x([-0.22, 0, 0])];
  return (100 * (trail - x([-0.03, 0, 0.8]))) / (trail - lead);
};

/** Turn of a line between two points level with one another along the target line, as the still shows it: + out at the lead end. */
const line = (near: Point, far: Point, aside: number): number =>
  degrees(behind(far, aside) - behind(near, aside)) / (1 / (4 - near[0]) - 1 / (4 - far[0])) / 4;

const of = (id: string): Fundamental => BUILT_IN.find((entry) => entry.id === id) as Fundamental;

describe("signs, held against a central projection", () => {
  it("yaw of 2 degrees: tilts up by 1.4, as 0.7 a degree", () => {
    expect((tilt(2, 0) - tilt(-2, 0)) / 4).toBeCloseTo(0.7, 1);
    expect(signedSensitivity(of("setup-tilt")).yaw).toBe(0.7);
  });
  it("roll turns every lean one for one, the shaft's the other way: its plus is the trade's", () => {
    expect((tilt(0, 2) - tilt(0, -2)) / 4).toBeCloseTo(1, 2);
    expect(Math.sign(shaft(0, 2) - shaft(0, -2))).toBe(cameraDirection(of("shaft-lean")).roll);
    expect(cameraDirection(of("impact-tilt")).roll).toBe(1);
  });
  it.each([
    ["shaft-lean", shaft(2, 0) - shaft(-2, 0)],
    ["ball-position", ball(2) - ball(-2)],
  ] as const)("%s goes by its sign under yaw: %f", (id, moved) => {
    expect(Math.abs(moved)).toBeGreaterThan(0.5);
    expect(cameraDirection(of(id)).yaw).toBe(Math.sign(moved));
  });
  it("a club that leans back out of the picture's plane opens the hinge when the phone goes toward the target, by 0.7 a degree", () => {
    expect((hinge(2) - hinge(-2)) / 4).toBeCloseTo(0.7, 1);
    expect(signedSensitivity(of("hinge")).yaw).toBe(0.7);
  });
  it("from behind, 10 cm on the ball's side: feet read more closed, the club at club-parallel more inside", () => {
    const feet = line([0.2, 0, 0], [-0.2, 0, 0], 0.1) - line([0.2, 0, 0], [-0.2, 0, 0], 0);
    const hands: Point = [0.3, 1, 0.4];
    const head: Point = [1.3, 1, 0.4];
    const club = behind(head, 0.5) - behind(hands, 0.5) - (behind(head, 0.4) - behind(hands, 0.4));
    expect(Math.sign(feet)).toBe(cameraDirection(of("foot-line")).offset);
    expect(Math.sign(club)).toBe(cameraDirection(of("shaft-line")).offset);
    expect(cameraDirection(of("shoulder-line")).offset).toBe(cameraDirection(of("foot-line")).offset);
  });
});

describe("where only the size is known", () => {
  it("grip lines, moving hips and head, and the academy's own fundamentals have no sign", () => {
    const own: Fundamental = { ...of("hinge"), id: "own-heel", ownName: "Heel" };
    for (const fundamental of [of("trail-v"), of("lead-v"), of("hip-sway"), of("hip-shift"), of("head-drift"), own])
      expect(signedSensitivity(fundamental)).toEqual({ yaw: 0, roll: 0, offset: 0 });
  });
});
