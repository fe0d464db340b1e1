import type { ImportPage } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { PHASES } from "../worker/file-tasks";
import type { JobView } from "./import-jobs";

type Unfinished = Exclude<JobView, { readonly state: "done" }>;

/** How far a reading is, in one sentence. */
export function sayProgress(words: Words, view: Unfinished): string {
  if (view.state === "stopped") return words.say("import-page.stopped.lede");
  if (view.state !== "running") return words.say("import-page.stopped.failed");
  const name = (Object.keys(PHASES) as (keyof typeof PHASES)[]).find((each) => PHASES[each] === view.phase);
  return words.say(`import-page.progress.${name ?? "waiting"}`, { read: view.read, of: view.of });
}

/** The page while a file is being read, or after that was stopped. */
export function buildProgressPage(words: Words, draftId: string, fileName: string, view: Unfinished): ImportPage {
  const running = view.state === "running";
  return {
    title: words.say(running ? "import-page.progress.title" : "import-page.stopped.title", { file: fileName }),
    lede: running ? words.say("import-page.progress.lede") : sayProgress(words, view),
    upload: null,
    preview: null,
    done: null,
    progress: {
      margin: words.say("import-page.margin.progress"),
      draftId,
      state: running ? "running" : "stopped",
      text: running ? sayProgress(words, view) : "",
      read: running ? view.read : 0,
      of: running ? view.of : 0,
      again: { href: `/import/${draftId}`, label: words.say("import-page.progress.again") },
      from: `/api/import/${draftId}/progress`,
      stop: words.say("import-page.progress.stop"),
      readAgain: words.say("import-page.stopped.read"),
      drop: words.say("import-page.drop"),
    },
  };
}
