import { VIEWS } from "@/lib/domain/fundamental";
import type { AsidePart } from "@/lib/ingest/parse-aside-form";
import type { AsideRest } from "@/lib/report/aside-model";
import { buildAsideDone, buildAsideRest } from "@/lib/report/build-aside";
import type { SavedPage } from "@/lib/report/saved-model";
import { type StudentRecord, trackHistories } from "@/lib/verdict/track-history";
import { sayClubGroup } from "@/lib/words/say-club";
import type { StudentViewer } from "../gate";
import { withListing } from "../roster/listing";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { judgedBesides, listingBesides } from "./load-saved";

/** The record as it was before a session or a film was set aside or brought back: only whether it counts is turned. */
function turned(record: StudentRecord, sessionId: string, part: AsidePart): StudentRecord {
  const turn = (reason: string | null): string | null => (reason === null ? "-" : null);
  if (part === "session")
    return {
      ...record,
      sessions: record.sessions.map((session) =>
        session.id === sessionId ? { ...session, setAsideReason: turn(session.setAsideReason) } : session,
      ),
    };
  return {
    ...record,
    captures: record.captures.map((film) =>
      film.sessionId === sessionId && film.view === part
        ? { ...film, setAsideReason: turn(film.setAsideReason) }
        : film,
    ),
  };
}

/** What of a session an address names. */
export function asidePart(text: string | undefined): AsidePart {
  return VIEWS.find((view) => view === text) ?? "session";
}

/** What it changed in the verdicts that a session, or one of its films, was set aside or brought back; null: no such session. */
export async function loadAsideDone(
  viewer: StudentViewer,
  sessionId: string,
  part: AsidePart,
  of: string | undefined,
): Promise<SavedPage | null> {
  const { record, tracks, grouping } = await loadStudentVerdicts(viewer);
  const session = record.sessions.find((each) => each.id === sessionId);
  if (!session) return null;
  const touched = tracks.filter(({ history }) => history.clubGroup === session.clubGroup);
  const names = touched.map(({ verdict }) => verdict.id);
  const before = trackHistories(turned(record, sessionId, part), viewer.today).filter(({ judged }) =>
    names.includes(judged.id),
  );
  const judged = await judgedBesides(viewer, before);
  const listing = listingBesides(viewer, names, judged);
  const film = record.captures.find((each) => each.sessionId === sessionId && each.view === part);
  return buildAsideDone(viewer.words, {
    student: record.student,
    session,
    part,
    reason: part === "session" ? session.setAsideReason : (film?.setAsideReason ?? null),
    clubName: sayClubGroup(viewer.words, grouping, session.clubGroup),
    tracks: touched.map(({ history, verdict }) => {
      const was = judged.get(verdict.id)?.verdict;
      return { history, after: verdict, before: was ? withListing(was, listing) : null };
    }),
    of: touched.find(({ history }) => history.fundamental.id === of)?.history ?? null,
    today: viewer.today,
  });
}

/** What stands beside the form: how a session stands in one fundamental, and which fact the camera's rule rests on. */
export async function loadAsideRest(
  viewer: StudentViewer,
  sessionId: string,
  of: string | undefined,
): Promise<AsideRest> {
  const { record, tracks } = await loadStudentVerdicts(viewer);
  const session = record.sessions.find((each) => each.id === sessionId);
  const track = tracks.find(({ history }) => history.fundamental.id === of && history.clubGroup === session?.clubGroup);
  const entry = track?.history.sessions.find((each) => each.session.id === sessionId) ?? null;
  return buildAsideRest(viewer.words, { student: record.student, sessionId, history: track?.history ?? null, entry });
}
