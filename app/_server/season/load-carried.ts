import { readCarriedLooks } from "@/db/read/carried-looks";
import { readEvents } from "@/db/read/events";
import { parseCarried } from "@/lib/domain/carried-look";
import type { Fundamental } from "@/lib/domain/fundamental";
import { buildCarried } from "@/lib/report/build-carried";
import type { CarriedPart } from "@/lib/report/carried-model";
import { readerSince } from "@/lib/report/reader-since";
import { dayIn } from "../clock";
import type { StudentViewer } from "../gate";

/** Which of the looks that came with a student are wanted. */
export interface CarriedWish {
  readonly fundamentals: readonly Fundamental[];
  /** Null: the page shows no club group, and nothing is carried for none. */
  readonly clubGroup: string | null;
  /** `latest`: the last look of each fundamental; else every look of that one. */
  readonly of: "latest" | { readonly fundamentalId: string };
  /** Up to that day; absent: all. */
  readonly until?: string;
}

/** What another academy said of a student, as it said it; null: nothing came. It enters no list, no count and no verdict. */
export function loadCarried(viewer: StudentViewer, wish: CarriedWish): CarriedPart | null {
  const { words, db, student, academy, today } = viewer;
  const { fundamentals, clubGroup, of, until } = wish;
  const rows = readCarriedLooks(db, student).filter(
    (row) => row.clubGroup === clubGroup && (of === "latest" || row.fundamentalId === of.fundamentalId),
  );
  const importedOn = rows.reduce((last, { importedAt }) => {
    const day = dayIn(academy.zone, new Date(importedAt));
    return day > last ? day : last;
  }, "");
  const looks = rows.flatMap(({ fundamentalId, saidBy, body }) => {
    const [fundamental, look] = [fundamentals.find(({ id }) => id === fundamentalId), parseCarried(body)];
    return fundamental && look ? [{ fundamental, saidBy, look }] : [];
  });
  return buildCarried(words, {
    looks,
    of: of === "latest" ? "season" : "fundamental",
    ...(until === undefined ? {} : { until }),
    importedOn,
    reader: readerSince(readEvents(db, student), { importedOn, seenOn: until ?? today }),
  });
}
