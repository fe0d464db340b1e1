import type { Database } from "@/db/client";
import { readRereadCandidates } from "@/db/read/rereads";
import { insertRereadDraw, type RereadValue } from "@/db/write/rereads";
import { insertSession } from "@/db/write/sessions";
import type { RereadCandidate } from "@/lib/domain/reread";
import { NOTHING_SEEN } from "@/lib/domain/session";
import { academyScope, countingStamp, NOW, openAcademy, sessionOn, studentScope, swings } from "./academy-fixture";

const capture = {
  placement: "unknown",
  placementLabel: null,
  squareness: "unknown",
  offBy: null,
  setAsideReason: null,
  seen: NOTHING_SEEN,
  placedBy: null,
} as const;

export const WISH = { fundamentalId: "hinge", view: "face-on", reader: "Coach", level: "b" } as const;

/** Ulla filmed twice with a reference and once without, Ferdi once; three swings each, hinge 80, 82, 84. */
export async function openReread(): Promise<Database> {
  const db = await openAcademy();
  const film = (filmReference: string | null) => [{ ...capture, view: "face-on" as const, filmReference }];
  const put = (student: string, day: string, reference: string | null, id: string) =>
    insertSession(db, studentScope(student), sessionOn(day, { captures: film(reference) }), {
      now: `${day}T18:00:00.000Z`,
      newId: () => id,
      batchId: null,
    });
  put("s1", "2031-01-05", "shelf 1", "u1");
  put("s1", "2031-01-12", "shelf 2", "u2");
  put("s1", "2031-01-19", null, "u3");
  put("s2", "2031-01-06", "shelf 3", "f1");
  insertSession(db, studentScope("t1", "a2"), sessionOn("2031-01-05", { captures: film("far"), swings: swings(1) }), {
    ...countingStamp("far"),
    batchId: null,
  });
  return db;
}

export function candidatesOf(db: Database): RereadCandidate[] {
  return readRereadCandidates(db, academyScope(), WISH);
}

/** A draw `d1` of the first films' swings. */
export function drawFirst(db: Database, count: number): void {
  const items = candidatesOf(db)
    .flatMap((candidate) =>
      candidate.filmReference === null ? [] : [{ ...candidate, filmReference: candidate.filmReference }],
    )
    .slice(0, count);
  insertRereadDraw(db, academyScope(), {
    id: "d1",
    reader: "Coach",
    level: "b",
    who: "Owner",
    day: "2031-03-01",
    drawnAt: NOW,
    items,
  });
}

export function typed(place: number, value: number | null): RereadValue {
  return { place, value, typed: value === null ? "n/m" : String(value), unit: "deg" };
}
