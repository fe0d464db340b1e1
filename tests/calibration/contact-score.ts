import { dayFromNumber } from "@/lib/domain/calendar-day";
import { decideContact } from "@/lib/verdict/contact-share";
import { drawnGroup } from "@/tests/lib/stats/made-groups";
import { seededChances } from "@/tests/lib/stats/seeded-normals";

/** Sessions of a simulated season. */
export const SESSIONS = 40;
/** Index of the first session of the new share. */
export const CHANGE_AT = 10;

/** A kind of season: the share before and after, and how alike the balls of a session are. */
export interface ContactKind {
  readonly before: number;
  readonly after: number;
  readonly correlation: number;
}

/** What the seasons of one kind came to; counts of seasons. */
export interface ContactScore extends ContactKind {
  readonly seasons: number;
  /** Unchanged: ever called changed; changed: before the change, or the wrong way first. */
  readonly falseWord: number;
  /** Called changed the right way, not before, by session 20 and by the last. */
  readonly found20: number;
  readonly found: number;
  /** Of those found: no longer said at the last session. */
  readonly takenBack: number;
  /** The share now, at the last session, within its interval. */
  readonly in80: number;
  readonly in95: number;
}

/** Seasons of one kind, five to thirty balls a session, looked at after every session. */
export function scoreContact(kind: ContactKind, seasons: number, seed: number): ContactScore {
  const chance = seededChances(seed);
  const count = { falseWord: 0, found20: 0, found: 0, takenBack: 0, in80: 0, in95: 0 };
  const wanted = kind.after === kind.before ? null : kind.after > kind.before ? "up" : "down";
  for (let season = 0; season < seasons; season++) {
    const groups = Array.from({ length: SESSIONS }, (_, i) =>
      drawnGroup(5 + Math.floor(26 * chance()), i < CHANGE_AT ? kind.before : kind.after, kind.correlation, chance),
    );
    const share = decideContact(
      groups.map(({ successes, trials }, i) => ({
        day: dayFromNumber(20_000 + 4 * i),
        solid: successes,
        balls: trials,
      })),
    );
    if (share.kind !== "ok") throw new Error("a season without a count");
    const { now, claims } = share.value;
    const first = claims.findIndex((claim) => claim !== null);
    if (first >= 0 && (wanted === null || first < CHANGE_AT || claims[first]?.direction !== wanted)) count.falseWord++;
    else if (first >= 0) {
      count.found++;
      if (first < 20) count.found20++;
      if (claims.at(-1)?.direction !== wanted) count.takenBack++;
    }
    if (now.low80 <= kind.after && kind.after <= now.high80) count.in80++;
    if (now.low95 <= kind.after && kind.after <= now.high95) count.in95++;
  }
  return { ...kind, seasons, ...count };
}
