import { readPreference } from "@/db/read/preferences";
import { updateBandsBegun } from "@/db/write/goal-bands";
import { insertPreference } from "@/db/write/preferences";
import type { Viewer } from "../gate";
import { PROGRAM } from "./program";

const LOOKED = "bands-day";

/** Before every day: what was planned before the first look may have begun before it too. */
const NEVER = "";

/**
 * Once a day of the academy: goal bands that were planned for today, or for a day since the last look, are in force now, and
 * whoever they reach is judged under them by the next page. Where the clock had leapt ahead and is back, those that seemed to
 * have begun are in force no more: whoever they reach is judged without them, and once more when their day comes.
 */
export function noteBandsBegun({ db, scope, academy, today }: Viewer): number {
  // The demo's day stands still.
  if (academy.fixedToday !== null) return 0;
  const looked = readPreference(db, scope, PROGRAM, LOOKED) ?? NEVER;
  if (looked === today) return 0;
  const [after, upTo] = looked < today ? [looked, today] : [today, looked];
  const marked = updateBandsBegun(db, scope, { after, upTo });
  insertPreference(db, scope, { viewer: PROGRAM, name: LOOKED, value: today });
  return marked;
}
