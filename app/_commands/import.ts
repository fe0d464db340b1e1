import { readFileSync } from "node:fs";
import path from "node:path";
import { buildArchivePage } from "@/app/_server/archive/archive-page";
import { ACADEMY_CHOICES, type AcademyChoice, closeDatabases } from "@/app/_server/database";
import { admitMachine, type Viewer } from "@/app/_server/gate";
import { withConsentBy } from "@/app/_server/import/consent-answers";
import { type ImportDraft, previewImport } from "@/app/_server/import/import-desk";
import { sayOutcome } from "@/app/_server/import/import-outcome";
import { buildPreviewPage } from "@/app/_server/import/import-page";
import { confirmImport } from "@/app/_server/import/write-import";
import { loadAcademyRules } from "@/app/_server/season/student-record";
import type { ArchiveImportPage } from "@/lib/report/archive-import-model";
import type { ImportPage } from "@/lib/report/form-model";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");

interface ImportArguments {
  readonly file: string;
  readonly answers: readonly (readonly [string, string])[];
  readonly confirm: "yes" | "no";
  readonly academy: AcademyChoice;
}

/** Arguments, or the word that is not understood. */
function readArguments(argv: readonly string[]): ImportArguments | string {
  const files: string[] = [];
  const answers: [string, string][] = [];
  let consentBy = "";
  let confirm: "yes" | "no" = "no";
  let academy: AcademyChoice = "own";
  for (let at = 0; at < argv.length; at++) {
    const word = argv[at] ?? "";
    if (word === "--confirm") confirm = "yes";
    else if (word === "--consent") {
      consentBy = argv[++at] ?? "";
      if (consentBy.trim() === "" || consentBy.startsWith("--")) return word;
    } else if (word === "--answer") {
      const given = argv[++at] ?? "";
      const equals = given.indexOf("=");
      if (equals < 1) return given || word;
      answers.push([given.slice(0, equals), given.slice(equals + 1)]);
    } else if (word === "--academy") {
      const wished = ACADEMY_CHOICES.find((choice) => choice === argv[at + 1]);
      if (!wished) return argv[at + 1] ?? word;
      academy = wished;
      at += 1;
    } else if (word.startsWith("--")) return word;
    else files.push(word);
  }
  const file = files[0];
  return file !== undefined && files.length === 1
    ? { file, answers: withConsentBy(answers, consentBy), confirm, academy }
    : (files[1] ?? "");
}

/** The preview in lines: what needs an answer and how to give it, what stays out, what was changed, what will be saved. */
function sayPreview(page: ImportPage): string[] {
  const { preview } = page;
  if (!preview) return [];
  const lines = [page.title, page.lede, ""];
  for (const question of preview.questions?.items ?? []) {
    lines.push(`${question.number}. ${question.heading} (${question.rows})`, `   ${question.why}`);
    for (const option of question.options) {
      const chosen = option.value === question.value ? "*" : " ";
      const field = option.text ? `  --answer "${option.text.name}=${option.text.label}"` : "";
      lines.push(`   ${chosen} ${option.label}:  --answer "${question.name}=${option.value}"${field}`);
    }
  }
  for (const part of [preview.issues, preview.notes])
    if (part)
      lines.push(
        "",
        part.heading,
        ...part.items.map((item) => `   ${item}`),
        ...(part.more === "" ? [] : [`   ${part.more}`]),
      );
  return [...lines, "", preview.saved.heading, ...preview.saved.lines.map((line) => `   ${line}`)];
}

/** An archive: what is asked and how to answer, what is in the way, what differs, what will be saved; and with the word, saved. */
async function importArchive(
  viewer: Viewer,
  draft: ImportDraft,
  page: ArchiveImportPage,
  confirm: "yes" | "no",
): Promise<number> {
  const { asked, lists } = page;
  const lines = [page.title, page.lede];
  if (asked) {
    lines.push("", asked.heading, `   ${asked.why}`);
    for (const { name, label, value } of asked.fields)
      lines.push(`   --answer "${name}=${value === "" ? label : value}"`);
  }
  for (const { heading, items } of lists) lines.push("", heading, ...items.map((item) => `   ${item}`));
  console.log(lines.join("\n"));
  const outcome = confirm === "yes" ? await confirmImport(viewer, draft) : null;
  if (outcome === null && page.submit !== null) {
    console.log(`\n${words.say("import-command.not-yet")}`);
    return 0;
  }
  if (outcome === null || outcome.kind === "nothing-ready") {
    console.error(`\n${words.say("import-command.nothing-ready")}`);
    return 1;
  }
  const { heading, lines: said } = sayOutcome(words, outcome);
  console.log(["", heading, ...said].join("\n"));
  return 0;
}

async function main(argv: readonly string[]): Promise<number> {
  const args = readArguments(argv);
  if (typeof args === "string") {
    console.error(words.say("import-command.usage", { word: args }));
    return 2;
  }
  const viewer = await admitMachine({ choice: args.academy, locale: "en" });
  if (!viewer || viewer.choice !== args.academy) {
    console.error(words.say("import-command.no-academy"));
    return 2;
  }
  let file: Buffer;
  try {
    file = readFileSync(args.file);
  } catch (error) {
    console.error(
      words.say("import-command.unreadable", { file: args.file, reason: (error as NodeJS.ErrnoException).code ?? "" }),
    );
    return 2;
  }
  const draft: ImportDraft = {
    fileName: path.basename(args.file),
    file: file.toString("base64"),
    answers: args.answers,
  };
  const archive = await buildArchivePage(viewer, "", draft);
  if (archive) return importArchive(viewer, draft, archive, args.confirm);
  const speaker = { words, ...loadAcademyRules(viewer.db, viewer.scope, viewer.academy) };
  const preview = await previewImport(viewer, draft);
  console.log(sayPreview(buildPreviewPage(speaker, "", draft, preview)).join("\n"));
  if (args.confirm === "no") {
    console.log(`\n${words.say(preview.plan ? "import-command.not-yet" : "import-command.nothing-ready")}`);
    return preview.plan ? 0 : 1;
  }
  const outcome = await confirmImport(viewer, draft, "command");
  if (outcome.kind === "nothing-ready") {
    console.error(`\n${words.say("import-command.nothing-ready")}`);
    return 1;
  }
  const { heading, lines } = sayOutcome(words, outcome);
  console.log(["", heading, ...lines].join("\n"));
  return outcome.kind === "unknown-students" ? 1 : 0;
}

main(process.argv.slice(2)).then((status) => {
  closeDatabases();
  process.exitCode = status;
});
