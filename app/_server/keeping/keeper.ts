import { deleteEndedLogIns } from "@/db/write/remains";
import { ABSOLUTE_SECONDS } from "../access/auth";
import { judgeSoon } from "../analysis/judge-soon";
import { readClock } from "../clock";
import { ACADEMY_CHOICES } from "../database";
import { clearAtLook } from "../erase/clear-at-look";
import { forgetOthersErasures } from "../erase/forget-in-memory";
import { admitMachine, type Viewer } from "../gate";
import { whenWritable } from "../import/write-gate";
import { noteBandsBegun } from "./bands-begun";
import { keepToday } from "./daily-job";
import { watchClock } from "./watch-clock";

/** How often the clock is looked at: what has ended stays ended from then on. */
const LOOK_MS = 60_000;

interface Keeper {
  timer: NodeJS.Timeout | null;
}

// On the global object: the bundler may load this file more than once in one process.
const KEY = Symbol.for("proofband.keeper");
const shared = globalThis as { [KEY]?: Keeper };

function keeper(): Keeper {
  shared[KEY] ??= { timer: null };
  return shared[KEY];
}

/** One look at an academy: at the clock, at what has ended by it, and at the day's work. */
export async function look(viewer: Viewer): Promise<void> {
  await whenWritable();
  forgetOthersErasures(viewer);
  // What an erasure could not clear, because somebody read just then.
  await clearAtLook(viewer.db);
  if (viewer.academy.fixedToday !== null) return;
  watchClock(viewer);
  if (noteBandsBegun(viewer) > 0) void judgeSoon(viewer);
  deleteEndedLogIns(viewer.db, readClock(), ABSOLUTE_SECONDS * 1000);
  await keepToday(viewer);
}

async function lookAtAll(): Promise<void> {
  for (const choice of ACADEMY_CHOICES) {
    const viewer = await admitMachine({ choice, locale: null });
    if (viewer?.choice === choice) await look(viewer);
  }
}

/** Begins to look after what is kept, until the process ends; begun twice it is begun once. */
export function startKeeper(): void {
  const known = keeper();
  if (known.timer !== null) return;
  let busy = false;
  const once = (): void => {
    if (busy) return;
    busy = true;
    lookAtAll()
      // A full disk, say: the next look tries again. Nothing is said of whose data it was.
      .catch((error: unknown) => process.stderr.write(`keeping: ${(error as { code?: string }).code ?? "failed"}\n`))
      .finally(() => {
        busy = false;
      });
  };
  known.timer = setInterval(once, LOOK_MS);
  known.timer.unref();
  once();
}
