import {
  CHECKED_OFFSET_SD,
  CHECKED_ROLL_SD,
  CHECKED_YAW_SD,
  UNKNOWN_OFFSET_SD,
  UNKNOWN_ROLL_SD,
  UNKNOWN_YAW_SD,
} from "@/lib/capture/camera-limits";
import { offsetAngle } from "@/lib/capture/misplacement";
import { cameraDirection } from "@/lib/domain/camera-direction";
import type { Fundamental, View } from "@/lib/domain/fundamental";
import type { CameraPlan, SessionPlan } from "./demo-plan";
import { normal, type Random } from "./random";

/** Where the phone truly stood, in degrees off square. */
export interface TrueCamera {
  readonly yaw: number;
  readonly roll: number;
  readonly offset: number;
}

function drawCamera(plan: CameraPlan, view: View, random: Random): TrueCamera {
  const [yaw, roll, offset] = [normal(random), normal(random), normal(random)];
  if (plan.squareness === "unknown") {
    return {
      yaw: plan.trueYaw ?? yaw * UNKNOWN_YAW_SD,
      roll: roll * UNKNOWN_ROLL_SD,
      offset: offset * UNKNOWN_OFFSET_SD,
    };
  }
  const stated = plan.squareness === "off" ? (plan.offBy ?? 0) : 0;
  const angle = offsetAngle(stated);
  return {
    yaw: (view === "face-on" ? stated : 0) + yaw * CHECKED_YAW_SD,
    roll: roll * CHECKED_ROLL_SD,
    offset: (view === "down-the-line" ? angle : 0) + offset * CHECKED_OFFSET_SD,
  };
}

/** Where the phone stood in each session, by view; sessions of one label share one place. A view not filmed is absent. */
export function drawCameras(
  sessions: readonly SessionPlan[],
  random: Random,
): readonly Partial<Record<View, TrueCamera>>[] {
  const places = new Map<string, TrueCamera>();
  return sessions.map((session) => {
    const drawn: Partial<Record<View, TrueCamera>> = {};
    for (const view of ["face-on", "down-the-line"] as const) {
      const plan = session.cameras[view];
      if (plan === undefined) continue;
      const label = plan.placementLabel === null ? null : `${view} ${plan.placementLabel}`;
      const camera = (label === null ? undefined : places.get(label)) ?? drawCamera(plan, view, random);
      if (label !== null) places.set(label, camera);
      drawn[view] = camera;
    }
    return drawn;
  });
}

/** The error that a true placement puts on every reading of a fundamental, in its unit; up where only its size is known. */
export function cameraError(camera: TrueCamera, fundamental: Fundamental): number {
  const { sensitivity } = fundamental;
  const direction = cameraDirection(fundamental);
  const way = (sign: number): number => (sign === 0 ? 1 : sign);
  return (
    way(direction.yaw) * sensitivity.yaw * camera.yaw +
    way(direction.roll) * sensitivity.roll * camera.roll +
    way(direction.offset) * sensitivity.offset * camera.offset
  );
}
