import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { readRereadCandidates, readRereadPairs } from "@/db/read/rereads";
import { readSessions } from "@/db/read/sessions";
import { insertRereadDraw, insertSameDraw } from "@/db/write/rereads";
import type { Fundamental } from "@/lib/domain/fundamental";
import { REREAD_LEVELS, type RereadLevel } from "@/lib/domain/reread";
import { type DrawnRereads, drawRereads } from "@/lib/verdict/draw-rereads";
import { READER_ERROR_THRESHOLDS } from "@/lib/verdict/reader-error-thresholds";
import { chance } from "../chance";
import { currentInstant } from "../clock";
import { standingOf } from "../consent/consent-gate";
import type { StudentViewer } from "../gate";
import { loadAcademyRules } from "../season/student-record";
import { drawableBefore } from "./reread-desk";

/** Who has read a student's films, and which fundamentals were read from stills. */
export interface TenTwiceReach {
  /** The latest first. */
  readonly readers: readonly string[];
  readonly fundamentals: readonly Fundamental[];
}

/** What ten readings of one student can be drawn from. */
export function tenTwiceReach(viewer: StudentViewer): TenTwiceReach {
  const { db, scope, academy, student } = viewer;
  const readers = [
    ...new Set(
      readSessions(db, student)
        .map(({ reader }) => reader)
        .reverse(),
    ),
  ];
  const fundamentals = loadAcademyRules(db, scope, academy).fundamentals.filter((each) => each.derivedFrom === null);
  return { readers, fundamentals };
}

interface Wish {
  readonly fundamental: Fundamental;
  readonly level: RereadLevel;
  readonly firstReader: string;
}

/** Ten readings of this student alone, of one fundamental, so that the difference of two readers gets an interval. */
export function drawTen(viewer: StudentViewer, { fundamental, level, firstReader }: Wish): DrawnRereads {
  const { db, scope, student } = viewer;
  const wish = { fundamentalId: fundamental.id, view: fundamental.view, reader: firstReader, level };
  const candidates = readRereadCandidates(db, scope, wish).filter(({ studentId }) => studentId === student.studentId);
  const pairs = readRereadPairs(db, scope).filter((pair) => pair.fundamentalId === fundamental.id).length;
  // The fewest pairs that are taken into verdicts.
  const count = READER_ERROR_THRESHOLDS.pairsNeeded.value;
  return drawRereads(
    candidates,
    { count, readBefore: drawableBefore(viewer), pairs: new Map([[fundamental.id, pairs]]) },
    chance,
  );
}

/** What came of a press; of what was refused, the word that says why. */
export type TenTwice =
  | { readonly kind: "drawn"; readonly drawId: string }
  | { readonly kind: "refused"; readonly why: "choice" | "consent" | "none" };

/**
 * Draws readings of an inherited student for the one who read them and for the new coach: the same readings, each in a draw
 * of its own, so that neither sees what the other reads or what was read first.
 *
 * @param coach the name under which the new coach reads
 */
export function drawTenTwice(viewer: StudentViewer, coach: string, data: FormData): TenTwice {
  const { db, scope, student, today, name } = viewer;
  const { readers, fundamentals } = tenTwiceReach(viewer);
  const fundamental = fundamentals.find(({ id }) => id === data.get("fundamental"));
  const level = REREAD_LEVELS.find((each) => each === data.get("level"));
  const firstReader = readers.find((each) => each === data.get("first"));
  const whose = data.getAll("readers");
  const asked = ["first", "coach"].filter((each) => whose.includes(each));
  const wanted = [...new Set(asked.map((each) => (each === "coach" ? coach : firstReader)))];
  if (!fundamental || !level || !firstReader || wanted.length === 0) return { kind: "refused", why: "choice" };
  if (standingOf(viewer, student, "measure").kind !== "given") return { kind: "refused", why: "consent" };
  const drawn = drawTen(viewer, { fundamental, level, firstReader });
  const items = drawn.items.flatMap(({ filmReference, ...place }) =>
    filmReference === null ? [] : [{ ...place, filmReference }],
  );
  if (items.length === 0) return { kind: "refused", why: "none" };
  const stamp = { who: name, day: today, drawnAt: currentInstant() };
  return inTransaction(db, () => {
    const [one = firstReader, other] = wanted;
    const first = randomUUID();
    insertRereadDraw(db, scope, { id: first, reader: one, level, items, ...stamp });
    if (other === undefined) return { kind: "drawn", drawId: first };
    const second = randomUUID();
    insertSameDraw(db, scope, { id: second, sameAs: first, reader: other, ...stamp });
    return { kind: "drawn", drawId: other === viewer.name ? second : first };
  });
}
