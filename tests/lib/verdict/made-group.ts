import type { BuiltInId } from "@/lib/domain/catalogue";
import type { GroupMember } from "@/lib/verdict/group-jump";
import { normal, type Random, whole } from "@/seed/random";
import { FACE_ON, filmedSeason } from "./filmed-season";

/** What is true of a simulated group session, face-on. */
export interface MadeGroup {
  /** Least and most students. */
  readonly students: readonly [number, number];
  /** Yaw of the phone that all share, degrees, and the sd of what a record lets pass of it. */
  readonly yaw: number;
  readonly sharedSd: number;
  /** Share of films without a camera record. */
  readonly unknown: number;
  /** What a student's own level moved by at the session. */
  readonly moved: (id: BuiltInId, random: Random) => number;
}

/** Students with five to nine films each, the last of them filmed as a group. */
export function madeGroup({ students, yaw, sharedSd, unknown, moved }: MadeGroup, random: Random): GroupMember[] {
  const common = yaw + sharedSd * normal(random);
  return Array.from({ length: whole(random, ...students) }, (): GroupMember => {
    const sessions = whole(random, 5, 9);
    const isLast = (at: number): boolean => at === sessions - 1;
    const season = filmedSeason(
      {
        sessions,
        fundamentals: FACE_ON,
        yaw: (at) => (isLast(at) ? common : 0),
        moved: (id, at) => (isLast(at) ? moved(id, random) : 0),
        unknown,
        label: () => null,
      },
      random,
    ).sessions;
    const session = season.at(-1);
    if (session === undefined) throw new Error("a season without a session");
    return { session, earlier: season.slice(0, -1) };
  });
}
