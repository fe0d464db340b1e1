/** A point or direction: x across the picture, y up, z from the student toward the phone. */
export type Point = readonly [number, number, number];

/** Where a pinhole camera stands about the origin, degrees and the points' own unit; it looks at the origin. */
export interface Pinhole {
  /** + toward larger x; the other way round than `Stand`. */
  readonly yaw: number;
  readonly pitch: number;
  /** + turns the picture clockwise. */
  readonly roll: number;
  /** Infinity: without perspective. */
  readonly distance: number;
}

const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/**
 * Where a point falls in the picture, in units of the plane through the origin: vectors and nothing else, written apart from
 * `lib/capture` and after the definition beside the reference cases.
 */
export function projected(point: Point, camera: Pinhole): readonly [number, number] {
  const [yaw, pitch, roll] = [camera.yaw, camera.pitch, camera.roll].map(
    (angle) => (angle * Math.PI) / 180,
  ) as never as [number, number, number];
  const back: Point = [Math.sin(yaw) * Math.cos(pitch), Math.sin(pitch), Math.cos(yaw) * Math.cos(pitch)];
  const level: Point = [Math.cos(yaw), 0, -Math.sin(yaw)];
  const upright = cross(back, level);
  const mixed = (a: number, b: number): Point =>
    level.map((value, i) => a * value + b * (upright[i] as number)) as never as Point;
  const right = mixed(Math.cos(roll), Math.sin(roll));
  const up = mixed(-Math.sin(roll), Math.cos(roll));
  const size =
    camera.distance === Number.POSITIVE_INFINITY ? 1 : camera.distance / (camera.distance - dot(point, back));
  return [dot(point, right) * size, dot(point, up) * size];
}

/** Angle of the line from one point to another in the picture, degrees from the horizontal. */
export function lineAngle(from: Point, to: Point, camera: Pinhole): number {
  const [a, b] = [projected(from, camera), projected(to, camera)];
  return (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
}

/** Lean from the vertical of the line from one point up to another, degrees, + to the right. */
export function leanInPicture(from: Point, to: Point, camera: Pinhole): number {
  return 90 - lineAngle(from, to, camera);
}
