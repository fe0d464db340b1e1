import type { FamilySource } from "@/lib/report/family-source";
import type { StudentVerdicts } from "../roster/load-verdicts";

/** Every filmed session by day; it is used where something that was measured in it counts. */
export function videosOf({ tracks }: Pick<StudentVerdicts, "tracks">): FamilySource["videos"] {
  const sessions = new Map<string, { readonly day: string; readonly use: "used" | "apart" }>();
  for (const { session, apart } of tracks.flatMap(({ history }) => history.sessions)) {
    const used = apart === null || sessions.get(session.id)?.use === "used";
    sessions.set(session.id, { day: session.day, use: used ? "used" : "apart" });
  }
  return [...sessions.values()].sort((a, b) => a.day.localeCompare(b.day));
}
