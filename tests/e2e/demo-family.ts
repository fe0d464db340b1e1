import path from "node:path";
import { familyProof } from "@/app/_server/family/family-cookie";
import { openDatabase } from "@/db/client";
import { served } from "./served";

const DAY_MS = 24 * 3_600_000;

/** Links as they lie in the demo, which makes none of its own: whose, and what became of them. */
const LINKS = {
  live: { studentId: "s01", days: 90, revoked: null },
  ended: { studentId: "s01", days: -1, revoked: null },
  revoked: { studentId: "s01", days: 90, revoked: "2026-11-01T08:00:00.000Z" },
  foreign: { studentId: "s02", days: 90, revoked: null },
  // Of somebody with a drill in hand whose dose names minutes, and whom no other test writes about.
  practised: { studentId: "s04", days: 90, revoked: null },
} as const;

export type DemoLink = keyof typeof LINKS;

/** The page that a link of the demo opens. */
export function demoPageId(which: DemoLink): string {
  return `${which}-page-for-the-tests`;
}

/** A hash of no secret that anybody could send. */
function hashOf(which: DemoLink): string {
  return `hash of ${which}`;
}

/**
 * Puts the links, the consents that they need, and something asked for into the demo; once.
 *
 * @param now the instant from which the days of the links are counted
 */
export function addDemoFamily(data: string = served.data, now: string = new Date().toISOString()): void {
  const db = openDatabase(path.join(data, "demo", "proofband.db"));
  try {
    const at = "2026-11-01T08:00:00.000Z";
    const consent = db.sqlite.prepare(
      `INSERT OR IGNORE INTO consent (id, student_id, kind, given_by, from_day, recorded_at)
       VALUES (?, ?, 'share', 'mother', '2020-01-01', ?)`,
    );
    for (const id of ["s01", "s02", "s04"]) consent.run(`share-of-${id}-for-the-tests`, id, at);
    const link = db.sqlite.prepare(
      `INSERT OR IGNORE INTO family_link (id, student_id, token_hash, label, who, made_at, expires_at, revoked_at)
       VALUES (?, ?, ?, ?, 'Coach Wren', ?, ?, ?)`,
    );
    for (const which of Object.keys(LINKS) as DemoLink[]) {
      const { studentId, days, revoked } = LINKS[which];
      const ends = new Date(Date.parse(now) + days * DAY_MS).toISOString();
      link.run(demoPageId(which), studentId, hashOf(which), `phone of the ${which} link`, at, ends, revoked);
    }
    db.sqlite
      .prepare(
        `INSERT OR IGNORE INTO family_request (id, student_id, link_id, kind, asked_at)
         VALUES ('asked-for-the-tests', 's01', ?, 'export', ?)`,
      )
      .run(demoPageId("live"), at);
  } finally {
    db.close();
  }
}

/** What the browser of somebody shows who has followed a link of the demo. */
export function demoFamilyCookie(which: DemoLink, data: string = served.data): string {
  process.env.PROOFBAND_DATA = data;
  const proof = familyProof({ id: demoPageId(which), tokenHash: hashOf(which) });
  return `proofband-family-${demoPageId(which)}=${proof}`;
}
