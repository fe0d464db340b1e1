import type { Database } from "@/db/client";
import { readRosterDigest, readRosterList } from "@/db/read/roster-lists";
import { insertRosterList } from "@/db/write/roster-lists";
import type { AcademyScope } from "@/lib/domain/scope";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { TrackSummary } from "@/lib/report/track-summary";
import { POLICY } from "@/lib/verdict/policy";
import { type ListedLook, rosterList } from "@/lib/verdict/roster-list";
import { isBehind, isJudging } from "../analysis/judging";
import { wholeAcademy } from "../gate";
import { type KeptTracks, keptTracks } from "./kept-tracks";

/** The list: for each track by name, whether it stands on it now and stood on it at each look. */
export interface Listing {
  readonly [track: string]: { readonly latest: boolean; readonly looks: readonly boolean[] };
}

/** The day under which the latest list is kept. */
const LATEST = "latest";

/** The list over all tracks of an academy. */
export function listingOf(
  inputs: readonly { readonly verdict: Pick<TrackVerdict, "id">; readonly listedLooks: readonly ListedLook[] }[],
): Listing {
  const list = rosterList(
    inputs.map((input) => input.listedLooks),
    POLICY.listShare,
    POLICY,
  );
  return Object.fromEntries(
    inputs.map((input, place) => [
      input.verdict.id,
      { latest: list.latest[place] ?? false, looks: list.looks[place] ?? [] },
    ]),
  );
}

/** Recomputes the roster's list over all tracks and keeps it. */
export function refreshRosterList(db: Database, scope: AcademyScope): Listing {
  const { inputDigest, byStudent } = keptTracks(db, scope);
  const listing = listingOf(
    [...byStudent.values()].flatMap(({ tracks, listed }) =>
      tracks.map(({ verdict }, place) => ({ verdict, listedLooks: listed[place] ?? [] })),
    ),
  );
  const kept = { asOf: LATEST, policyVersion: POLICY.version, inputDigest };
  insertRosterList(db, scope, { ...kept, body: JSON.stringify(listing) });
  return listing;
}

// Both go with the tracks that they are of: nothing else holds on to them.
const read = new WeakMap<KeptTracks, { readonly digest: string; readonly listing: Listing }>();
const joined = new WeakMap<Listing, { readonly kept: KeptTracks; readonly tracks: ListedTracks }>();

/** The tracks of an academy by student, each with what the roster's list says of it. */
export type ListedTracks = ReadonlyMap<string, readonly TrackSummary[]>;

function readListing(db: Database, scope: AcademyScope, kept: KeptTracks, digest: string): Listing {
  const known = read.get(kept);
  if (known?.digest === digest) return known.listing;
  const row = readRosterList(db, scope, LATEST, POLICY.version);
  const listing = row ? (JSON.parse(row.body) as Listing) : {};
  read.set(kept, { digest, listing });
  return listing;
}

/**
 * The kept list, or a new one when the analyses have moved on. While a large import is judged they move on with every
 * track: the kept one holds until all are judged, and what isn't on it yet isn't called proved yet.
 */
export function loadListing(db: Database, viewed: AcademyScope): Listing {
  const scope = wholeAcademy(viewed);
  const kept = keptTracks(db, scope);
  const digest = readRosterDigest(db, scope, LATEST, POLICY.version);
  const holds = isJudging(scope.academyId) || isBehind(scope.academyId) || digest === kept.inputDigest;
  if (holds) return readListing(db, scope, kept, digest ?? "");
  const listing = refreshRosterList(db, scope);
  read.set(kept, { digest: kept.inputDigest, listing });
  return listing;
}

/** Every track of the students whom the viewer may see, with what the roster's list says of it. */
export function loadListedTracks(db: Database, viewed: AcademyScope): ListedTracks {
  const listing = loadListing(db, viewed);
  const kept = keptTracks(db, wholeAcademy(viewed));
  const known = joined.get(listing);
  const tracks = known?.kept === kept ? known.tracks : joinListing(kept, listing);
  joined.set(listing, { kept, tracks });
  if (viewed.students === "all") return tracks;
  return new Map(viewed.students.flatMap((id) => (tracks.has(id) ? [[id, tracks.get(id) ?? []] as const] : [])));
}

function joinListing({ byStudent }: KeptTracks, listing: Listing): ListedTracks {
  return new Map(
    [...byStudent].map(([studentId, { tracks }]) => [
      studentId,
      tracks.map((track) => ({ ...track, verdict: withListing(track.verdict, listing) })),
    ]),
  );
}

/** A verdict with what the roster's list says of it. */
export function withListing(verdict: TrackVerdict, listing: Listing): TrackVerdict {
  const entry = listing[verdict.id];
  const listed = entry?.latest ?? false;
  return {
    ...verdict,
    listed,
    said: listed || (verdict.verdict !== "gain" && verdict.verdict !== "slip") ? verdict.verdict : "open",
    ...(verdict.looks
      ? { looks: verdict.looks.map((look, place) => ({ ...look, listed: entry?.looks[place] ?? false })) }
      : {}),
  };
}
