import { notFound } from "next/navigation";
import { buildSavedPage, type SavedTrack } from "@/lib/report/build-saved";
import type { SavedPage } from "@/lib/report/saved-model";
import { type StudentRecord, type TrackHistory, trackHistories } from "@/lib/verdict/track-history";
import { sayClubGroup } from "@/lib/words/say-club";
import { judgeHistory } from "../analysis/refresh-analyses";
import { type StudentViewer, wholeAcademy } from "../gate";
import { keptTracks } from "../roster/kept-tracks";
import { listingOf, withListing } from "../roster/listing";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import type { Judged } from "../worker/tasks";

function without(record: StudentRecord, sessionId: string): StudentRecord {
  return {
    ...record,
    sessions: record.sessions.filter((session) => session.id !== sessionId),
    captures: record.captures.filter((capture) => capture.sessionId !== sessionId),
    readings: record.readings.filter((reading) => reading.sessionId !== sessionId),
  };
}

/** Tracks as they would be judged on another record, by the names of their verdicts. */
export async function judgedBesides(
  viewer: StudentViewer,
  histories: readonly TrackHistory[],
): Promise<ReadonlyMap<string, Judged>> {
  const judged = new Map<string, Judged>();
  for (const history of histories) {
    if (history.judged.sessions.length === 0) continue;
    judged.set(history.judged.id, await judgeHistory(viewer.db, viewer.scope, history));
  }
  return judged;
}

/**
 * The roster's list as it would be had the student's tracks been judged so: over the whole academy, as the list in force is,
 * whoever looks. Of others' tracks nothing comes out but whether these stand on it.
 */
export function listingBesides(viewer: StudentViewer, touched: readonly string[], judged: ReadonlyMap<string, Judged>) {
  const { byStudent } = keptTracks(viewer.db, wholeAcademy(viewer.scope));
  const inputs = [...byStudent.values()].flatMap(({ tracks, listed }) =>
    tracks.flatMap(({ verdict }, place) => {
      if (!touched.includes(verdict.id)) return [{ verdict, listedLooks: listed[place] ?? [] }];
      const other = judged.get(verdict.id);
      return other ? [{ verdict, listedLooks: other.listedLooks }] : [];
    }),
  );
  return listingOf(inputs);
}

/** What a saved session changed in what is said of its student: judged with it and without it, by all that is known now. */
export async function loadSaved(viewer: StudentViewer, sessionId: string): Promise<SavedPage> {
  const { record, tracks, grouping } = await loadStudentVerdicts(viewer);
  const session = record.sessions.find((each) => each.id === sessionId);
  if (!session) return notFound();
  const touched = tracks.filter(({ history }) => history.sessions.some((entry) => entry.session.id === sessionId));
  const names = touched.map(({ verdict }) => verdict.id);
  const others = trackHistories(without(record, sessionId), viewer.today).filter(({ judged }) =>
    names.includes(judged.id),
  );
  const judged = await judgedBesides(viewer, others);
  const listing = listingBesides(viewer, names, judged);
  const inGroup = new Set(
    record.sessions
      .filter(({ id, clubGroup }) => id !== sessionId && clubGroup === session.clubGroup)
      .map(({ id }) => id),
  );
  return buildSavedPage(viewer.words, {
    student: record.student,
    session,
    clubName: sayClubGroup(viewer.words, grouping, session.clubGroup),
    tracks: touched.map(({ history, verdict }): SavedTrack => {
      const before = judged.get(verdict.id)?.verdict;
      return { history, after: verdict, before: before ? withListing(before, listing) : null };
    }),
    readings: record.readings.filter((reading) => reading.sessionId === sessionId),
    earlier: record.readings.filter((reading) => inGroup.has(reading.sessionId)),
    today: viewer.today,
  });
}
