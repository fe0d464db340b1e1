import { randomUUID } from "node:crypto";
import { isNamedIn, type Naming } from "@/lib/domain/named-in";
import { withoutNames } from "@/lib/domain/without-names";
import { diskFailureOf } from "../door/disk-failure";
import type { Viewer } from "../gate";
import { isDraftId } from "./draft-forms";
import { type FormDraft, type Refused, typedEntries } from "./typed-entries";

/** A form that the disk didn't take, in memory. */
interface Held {
  readonly kind: string;
  readonly body: FormDraft;
}

/** Forms held at one time, each up to the size that an action takes; beyond, the oldest goes: a disk that stays full is a fault to be mended. */
const MOST_HELD = 50;

// On the global object: the bundler may load this file more than once in one process.
const KEY = Symbol.for("proofband.held-forms");
const shared = globalThis as { [KEY]?: Map<string, Held> };

function held(): Map<string, Held> {
  shared[KEY] ??= new Map();
  return shared[KEY];
}

const nameOf = ({ scope }: Viewer, id: string): string => `${scope.academyId} ${scope.userId ?? ""} ${id}`;

/** A form that waits in memory because the disk took nothing of it; null: none does. */
export function findHeld(viewer: Viewer, kind: string, id: string): FormDraft | null {
  const found = held().get(nameOf(viewer, id));
  return found?.kind === kind ? found.body : null;
}

/** Lets go of a form that the disk has taken since. */
export function releaseHeld(viewer: Viewer, id: string): void {
  held().delete(nameOf(viewer, id));
}

/** Lets go of what names somebody who was erased; without a naming, of everything of the academy. */
export function forgetHeld(academyId: string, naming: Naming | null): void {
  for (const [name, { kind, body }] of held()) {
    if (!name.startsWith(`${academyId} `)) continue;
    if (naming === null || isNamedIn(kind, naming)) held().delete(name);
    else held().set(name, { kind, body: withoutNames(body, naming) as FormDraft });
  }
}

/**
 * Refuses a form that the disk took nothing of, because it is full or closed for writing or another program writes: what was typed waits in
 * memory, so that its page shows it again, with scripts and without, and a page with scripts keeps it as soon as it can.
 *
 * @throws error where it is no failure of the disk
 */
export function refuseForDisk(viewer: Viewer, kind: string, data: FormData, error: unknown): Refused {
  const failure = diskFailureOf(error);
  if (failure === null) throw error;
  const wished = String(data.get("draft") ?? "");
  const id = isDraftId(wished) ? wished : randomUUID();
  const refusal = viewer.words.say(`draft.nothing-saved.${failure}`);
  const body = { entries: typedEntries(data), errors: {}, refusal, writer: String(data.get("writer") ?? "") };
  const forms = held();
  forms.delete(nameOf(viewer, id));
  forms.set(nameOf(viewer, id), { kind, body });
  for (const oldest of forms.keys()) {
    if (forms.size <= MOST_HELD) break;
    forms.delete(oldest);
  }
  return { kind: "refused", draftId: id };
}
