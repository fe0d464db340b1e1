import { ACADEMY_CHOICES, type AcademyChoice, closeDatabases, dataFolder } from "@/app/_server/database";
import { type Lock, takeLock } from "@/app/_server/door/server-lock";
import { clearTracesSoon } from "@/app/_server/erase/clear-traces";
import { eraseGroup } from "@/app/_server/erase/erase-group";
import { previewErasure, previewLines } from "@/app/_server/erase/load-erase";
import { dropLeftovers } from "@/app/_server/erase/old-copies";
import { admitMachine, admitToStudent } from "@/app/_server/gate";
import { readErasedGroup } from "@/db/read/erased-group";
import { readStudents } from "@/db/read/students";
import { SAID_REASONS } from "@/lib/domain/erasure";
import { ERASING_THRESHOLDS } from "@/lib/verdict/erasing-thresholds";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");

interface EraseArguments {
  readonly academy: AcademyChoice;
  readonly student: string | null;
  readonly alias: string | null;
  readonly reason: (typeof SAID_REASONS)[number];
  readonly act: "erase" | "preview";
}

/** Arguments, or the word that is not understood. */
function readArguments(argv: readonly string[]): EraseArguments | string {
  const given = new Map<string, string>();
  const rest = argv.filter((arg) => arg !== "--yes");
  for (let at = 0; at < rest.length; at += 2) {
    const [name, value] = [rest[at] ?? "", rest[at + 1]];
    if (!["--academy", "--student", "--alias", "--reason"].includes(name) || value === undefined) return name;
    given.set(name, value);
  }
  const academy = ACADEMY_CHOICES.find((choice) => choice === (given.get("--academy") ?? "own"));
  const reason = SAID_REASONS.find((each) => each === given.get("--reason"));
  if (!academy) return given.get("--academy") ?? "--academy";
  if (!reason) return given.get("--reason") ?? "--reason";
  const [student, alias] = [given.get("--student") ?? null, given.get("--alias")?.normalize("NFC") ?? null];
  if ((student === null) === (alias === null)) return "--student";
  return { academy, student, alias, reason, act: argv.includes("--yes") ? "erase" : "preview" };
}

function refuse(key: string, args = {}): number {
  console.error(words.say(`erase-command.${key}`, args));
  return 2;
}

// Beside a server the data are shared as by any command; beside a restore nothing may be erased.
async function main(argv: readonly string[]): Promise<number> {
  const args = readArguments(argv);
  if (typeof args === "string") return refuse("usage", { word: args });
  const lock: Lock = takeLock(dataFolder(), 0);
  if (lock.kind === "held" && lock.holder.port === 0) return refuse("held", { pid: String(lock.holder.pid) });
  try {
    return await eraseAsAsked(args);
  } finally {
    if (lock.kind === "taken") lock.release();
  }
}

async function eraseAsAsked(args: EraseArguments): Promise<number> {
  const viewer = await admitMachine({ choice: args.academy, locale: "en" });
  if (!viewer || viewer.choice !== args.academy) return refuse("no-academy");
  const { db, scope } = viewer;
  const found = readStudents(db, scope).filter(({ id, alias }) => id === args.student || alias === args.alias);
  const wished = args.student ?? args.alias ?? "";
  if (found.length > 1) return refuse("several", { alias: wished, ids: found.map(({ id }) => id).join(", ") });
  const student = found[0] ? admitToStudent(viewer, found[0].id) : null;
  if (!student) return refuse("no-student", { wished });
  const preview = previewErasure({ db, student });
  console.log(words.say("erase-command.goes", { alias: preview.aliases.join(", ") }));
  for (const [name, count] of previewLines(preview))
    console.log(words.say("erase-command.line", { what: words.say(`erase.line.${name}`), count }));
  if (preview.texts > 0) console.log(words.say("erase.texts", { count: preview.texts }));
  if (args.act === "preview") {
    console.log(words.say("erase-command.preview"));
    return 0;
  }
  const note = { who: words.say("erase-command.who"), reason: args.reason, words };
  const erased = eraseGroup(db, readErasedGroup(db, student), note);
  if (!erased) return refuse("no-student", { wished });
  dropLeftovers(db.file);
  const traces = await clearTracesSoon(db);
  const counts = { sessions: erased.rows.session, readings: erased.rows.reading };
  console.log(words.say("erase-command.done", { ...counts, days: ERASING_THRESHOLDS.copyDays.value }));
  if (traces === "left") console.log(words.say("erased.traces"));
  return 0;
}

main(process.argv.slice(2))
  .catch((error: unknown) => {
    const reason = error instanceof Error ? error.message : String(error);
    console.error(words.say("erase-command.failed", { reason }));
    return 1;
  })
  .then((status) => {
    closeDatabases();
    process.exitCode = status;
  });
