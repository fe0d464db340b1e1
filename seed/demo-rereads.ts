import type { Database } from "@/db/client";
import { readReaderErrors, readRereadCandidates, readRereadItems, readRereadPairs } from "@/db/read/rereads";
import {
  insertReaderError,
  insertRereadDraw,
  insertRereadValues,
  insertSameDraw,
  type RereadValue,
  updateDrawFinished,
} from "@/db/write/rereads";
import type { FundamentalId } from "@/lib/domain/fundamental";
import type { RereadLevel } from "@/lib/domain/reread";
import type { AcademyScope } from "@/lib/domain/scope";
import { drawRereads } from "@/lib/verdict/draw-rereads";
import { fitReaderError } from "@/lib/verdict/fit-reader-error";
import { usualNoise } from "./demo-noise";
import { DEMO_READER, DEMO_TODAY, SECOND_READER } from "./demo-plan";
import { requireFundamental } from "./demo-season";
import { normal, type Random, randomFrom } from "./random";
import { roundTo } from "./simulate";

/** Seed of all that is drawn here; a stream a draw. */
const SEED = 20260912;

/** One draw of the demo, and how its readers truly err. */
interface DemoDraw {
  readonly id: string;
  readonly fundamentalId: FundamentalId;
  readonly level: RereadLevel;
  readonly count: number;
  /** Typed so far; all of them: the draw is finished on the demo's today. */
  readonly read: number;
  readonly stream: number;
}

/** The error of placing points alone, as a share of the whole error of reading. */
const SAME_STILL = 0.5;

/** How much the second reader reads higher, in sds of one reading. */
const SECOND_BIAS = 0.8;

const DRAWS: readonly DemoDraw[] = [
  { id: "reread-1", fundamentalId: "hinge", level: "b", count: 20, read: 20, stream: 1 },
  { id: "reread-2", fundamentalId: "setup-tilt", level: "a", count: 12, read: 12, stream: 2 },
  { id: "reread-3", fundamentalId: "hip-sway", level: "b", count: 20, read: 6, stream: 3 },
];

const DAY_BEFORE = "2026-09-11";
const stamp = { now: `${DEMO_TODAY}T17:00:00.000Z`, who: DEMO_READER, why: "" };

/** What stood in each item's reading first, known to the simulation alone. */
function firstValues(db: Database, drawId: string): readonly number[] {
  return db.sqlite
    .prepare<[string], number>(
      `SELECT coalesce((SELECT correction.value FROM correction WHERE correction.reading_id = reading.id
         ORDER BY correction.id DESC LIMIT 1), reading.value)
       FROM reread_item JOIN session ON session.id = reread_item.session_id
         JOIN reading ON reading.swing_id = reread_item.swing_id
           AND reading.fundamental_id = reread_item.fundamental_id
           AND reading.reader = session.reader AND reading.reread = 0
       WHERE draw_id = ? ORDER BY place`,
    )
    .pluck()
    .all(drawId);
}

/** Two readings of one still err independently, so that they differ by root 2 of one error. */
function readAgain(
  first: readonly number[],
  draw: DemoDraw,
  who: { readonly bias: number; readonly read: number },
  random: Random,
): RereadValue[] {
  const { readerSd, unit } = requireFundamental(draw.fundamentalId);
  const sd = readerSd * (draw.level === "a" ? SAME_STILL : 1);
  return first.slice(0, who.read).map((value, at) => {
    const again = value + who.bias * readerSd + Math.SQRT2 * sd * normal(random);
    const read = roundTo(again, usualNoise(draw.fundamentalId).rounding);
    return { place: at + 1, value: read, typed: String(read), unit };
  });
}

function insertDraw(db: Database, scope: AcademyScope, draw: DemoDraw): void {
  const { id, fundamentalId, level, count } = draw;
  const random = randomFrom(SEED, draw.stream);
  const { view } = requireFundamental(fundamentalId);
  const candidates = readRereadCandidates(db, scope, { fundamentalId, view, reader: DEMO_READER, level });
  const wish = { count, readBefore: `${DAY_BEFORE}T00:00:00.000Z`, pairs: new Map() };
  const { items } = drawRereads(candidates, wish, () => random.uniform());
  if (items.length < count) throw new RangeError(`too little to draw from: ${fundamentalId}`);
  insertRereadDraw(db, scope, {
    ...{
      id,
      level,
      reader: DEMO_READER,
      who: DEMO_READER,
      day: DAY_BEFORE,
      drawnAt: `${DAY_BEFORE}T16:0${draw.stream}:00.000Z`,
    },
    items: items.flatMap(({ filmReference, ...place }) =>
      filmReference === null ? [] : [{ ...place, filmReference }],
    ),
  });
  const first = firstValues(db, id);
  insertRereadValues(db, scope, id, readAgain(first, draw, { bias: 0, read: draw.read }, random), stamp);
}

function finish(db: Database, scope: AcademyScope, draw: Pick<DemoDraw, "id" | "fundamentalId">): void {
  updateDrawFinished(db, scope, draw.id, { day: DEMO_TODAY, now: stamp.now });
  const pairs = readRereadPairs(db, scope).filter((pair) => pair.fundamentalId === draw.fundamentalId);
  const newest = readReaderErrors(db, scope).findLast((each) => each.fundamentalId === draw.fundamentalId);
  const fitted = fitReaderError(pairs, requireFundamental(draw.fundamentalId), newest, DEMO_TODAY);
  if (fitted) insertReaderError(db, scope, fitted, stamp.now);
}

/**
 * Stills of the demo read again: one draw finished and measured, the same stills by a second reader, one of the same still
 * alone, and one half read. All are finished on the demo's today, so that what they measure holds from the day after and
 * changes no story.
 */
export function insertDemoRereads(db: Database, scope: AcademyScope): void {
  for (const draw of DRAWS) {
    insertDraw(db, scope, draw);
    if (draw.read === draw.count) finish(db, scope, draw);
  }
  const [original] = DRAWS;
  if (original === undefined) return;
  const twin = { ...original, id: "reread-4", stream: 4 };
  const drawnAt = `${DEMO_TODAY}T06:00:00.000Z`;
  insertSameDraw(db, scope, {
    ...{ id: twin.id, sameAs: original.id, reader: SECOND_READER, who: DEMO_READER, day: DEMO_TODAY, drawnAt },
  });
  const random = randomFrom(SEED, twin.stream);
  const values = readAgain(firstValues(db, twin.id), twin, { bias: SECOND_BIAS, read: twin.read }, random);
  insertRereadValues(db, scope, twin.id, values, stamp);
  if (readRereadItems(db, scope, twin.id).length !== original.count)
    throw new RangeError("the second reader lacks stills");
  finish(db, scope, twin);
}
