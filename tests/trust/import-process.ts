import { admitMachine } from "@/app/_server/gate";
import { startImport } from "@/app/_server/import/write-jobs";

// Imports a draft of the own academy as the server does, and says when the writing has begun.
const [, , draftId = ""] = process.argv;

async function run(): Promise<void> {
  const viewer = await admitMachine({ choice: "own", locale: null });
  if (!viewer) throw new Error("no academy");
  const job = startImport(viewer, draftId, { door: "page", who: "Owner" });
  const timer = setInterval(() => {
    if (Atomics.load(job.seen, 1) === 0) return;
    clearInterval(timer);
    process.stdout.write("writing\n");
  }, 1);
  await job.written;
  clearInterval(timer);
  process.stdout.write(`${job.outcome}\n`);
}

void run();
