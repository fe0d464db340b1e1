import { createHash } from "node:crypto";
import type { Database } from "@/db/client";
import { type CurrentAnalysis, readCurrentKeys, readCurrentSummaries } from "@/db/read/current-analyses";
import { readRosterList } from "@/db/read/roster-lists";
import { insertRosterList } from "@/db/write/roster-lists";
import type { AcademyScope } from "@/lib/domain/scope";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { TrackSummary } from "@/lib/report/track-summary";
import { POLICY } from "@/lib/verdict/policy";
import { type ListedLook, rosterList } from "@/lib/verdict/roster-list";
import { isBehind, isJudging } from "../analysis/judging";
import { wholeAcademy } from "../gate";

/** What the roster's list reads of one analysis. */
export type ListingInput = TrackSummary & { readonly listedLooks: readonly ListedLook[] };

/** The list: for each track by name, whether it stands on it now and stood on it at each look. */
export interface Listing {
  readonly [track: string]: { readonly latest: boolean; readonly looks: readonly boolean[] };
}

function digestOf(analyses: readonly CurrentAnalysis[]): string {
  const hash = createHash("sha256");
  for (const row of analyses)
    hash.update(`${row.studentId} ${row.fundamentalId} ${row.clubGroup} ${row.dataRevision} ${row.noiseModel}\n`);
  return hash.digest("hex");
}

/** The day under which the latest list is kept. */
const LATEST = "latest";

/** The list over all tracks of an academy. */
export function listingOf(inputs: readonly ListingInput[]): Listing {
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
  const analyses = readCurrentSummaries(db, scope, POLICY.version);
  const inputs = analyses.map((row) => JSON.parse(row.summary) as ListingInput);
  const listing = listingOf(inputs);
  const kept = { asOf: LATEST, policyVersion: POLICY.version, inputDigest: digestOf(analyses) };
  insertRosterList(db, scope, { ...kept, body: JSON.stringify(listing) });
  return listing;
}

/**
 * The kept list, or a new one when the analyses have moved on. While a large import is judged they move on with every
 * track: the kept one holds until all are judged, and what isn't on it yet isn't called proved yet.
 */
export function loadListing(db: Database, viewed: AcademyScope): Listing {
  const scope = wholeAcademy(viewed);
  const kept = readRosterList(db, scope, LATEST, POLICY.version);
  if (isJudging(scope.academyId) || isBehind(scope.academyId)) return kept ? (JSON.parse(kept.body) as Listing) : {};
  return kept && kept.inputDigest === digestOf(readCurrentKeys(db, scope, POLICY.version))
    ? (JSON.parse(kept.body) as Listing)
    : refreshRosterList(db, scope);
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
