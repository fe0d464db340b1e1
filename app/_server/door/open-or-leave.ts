import { wordsFor } from "@/lib/words/catalogue";
import { dataFolder, openForServing } from "../database";
import { startKeeper } from "../keeping/keeper";
import { wrongOrigin } from "./origin";

async function reasonNotToServe(): Promise<string | null> {
  const words = wordsFor("en");
  const stated = wrongOrigin();
  if (stated !== null) return words.say("prepare.origin", { stated });
  const folder = dataFolder();
  try {
    const holder = await openForServing(Number(process.env.PORT || 3000));
    return holder && words.say("prepare.held", { folder, pid: String(holder.pid), port: String(holder.port) });
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return words.say("prepare.unusable", { folder, reason });
  }
}

/** Opens the data for serving, and begins to look after them. A server that can't have them says why and ends: it must not answer without them. */
export async function openOrLeave(): Promise<void> {
  if (process.env.NEXT_PHASE === "phase-production-build") return;
  const reason = await reasonNotToServe();
  if (reason === null) {
    startKeeper();
    return;
  }
  process.stderr.write(`\n${reason}\n`);
  process.exit(1);
}
