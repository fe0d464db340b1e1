import { sayHour } from "@/lib/words/say-hour";
import { dayIn, readClock } from "../clock";
import type { Viewer } from "../gate";

/** When something was kept, where the academy is; the demo's day stands still, its clock doesn't. */
export function keptAt({ words, academy }: Viewer, instant: string): string {
  return sayHour(words, instant, academy.zone, dayIn(academy.zone, readClock()));
}
