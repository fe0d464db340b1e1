import { readErasureCount } from "@/db/read/erasures";
import { isIdIn, type Naming } from "@/lib/domain/named-in";
import { forgetHeld } from "../draft/held-forms";
import { FAMILY_KEYS } from "../family/family-keys";
import type { Viewer } from "../gate";
import { forgetAnswers } from "../import/import-desk";
import { forgetJobs } from "../import/import-jobs";
import { forgetHeldOnce } from "../people/shown-once";
import { forgetHeldRosters } from "../roster/held-roster";
import { forgetKeptTracks } from "../roster/kept-tracks";

// On the global object: the bundler may load this file more than once in one process.
const KEY = Symbol.for("proofband.known-erasures");
const shared = globalThis as { [KEY]?: Map<string, number> };

/** Erasures that this process knows of, by academy: a command beside the server may add one. */
function known(): Map<string, number> {
  shared[KEY] ??= new Map();
  return shared[KEY];
}

// What is about a family bears the student's id in its key; whom another process erased isn't known, so that all of it goes.
function isOfErasedFamily(key: string, naming: Naming | null): boolean {
  return FAMILY_KEYS.some((word) => key.startsWith(`${word} `)) && (naming === null || isIdIn(key, naming.ids));
}

function forget(academyId: string, naming: Naming | null): void {
  forgetHeldOnce((key) => isOfErasedFamily(key, naming));
  forgetHeld(academyId, naming);
  forgetAnswers(academyId);
  forgetJobs(academyId);
  forgetKeptTracks(academyId);
  forgetHeldRosters(academyId);
}

/** Lets go of what lies in memory and names somebody whom this process has just erased: forms that the disk didn't take, previews of uploads. */
export function forgetInMemory({ db, scope }: Pick<Viewer, "db" | "scope">, naming: Naming): void {
  forget(scope.academyId, naming);
  known().set(scope.academyId, readErasureCount(db, scope));
}

/** The same after an erasure by another process, of whom nobody here knows the name: all such things of the academy go. */
export function forgetOthersErasures({ db, scope }: Pick<Viewer, "db" | "scope">): void {
  const count = readErasureCount(db, scope);
  const before = known().get(scope.academyId) ?? count;
  known().set(scope.academyId, count);
  if (before !== count) forget(scope.academyId, null);
}
