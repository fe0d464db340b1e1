import type { Archive } from "@/lib/domain/archive";
import type { Words } from "@/lib/words/catalogue";
import type { ArchiveTable } from "./archive-table";

/** What stands in a column: said for this table, or for every table that has it. */
export function sayColumn(words: Words, tableName: string, column: string): string {
  const slug = column.replaceAll(" ", "-");
  const own = `archive.column.${tableName}.${slug}`;
  return words.say(words.has(own) ? own : `archive.column.${slug}`);
}

const LEFT_OUT = ["films", "pain", "open-draws", "drafts", "viewers", "imports", "changes", "told", "others"];

/**
 * What an archive leaves out.
 *
 * @param withoutPain of how many of its students nothing is told of what hurts
 */
export function sayLeftOut(words: Words, key: string, withoutPain: number): string {
  if (key === "pain" && withoutPain > 0) return words.say("pain.left-out", { students: withoutPain });
  return words.say(`archive.readme.left-out.${key}`);
}

/** The page of plain text that says what every file of an archive is, and what every column means. */
export function archiveReadme(
  words: Words,
  archive: Archive,
  tables: readonly ArchiveTable[],
  made: { readonly day: string; readonly withoutPain: number },
): string {
  const say = (key: string, args = {}): string => words.say(`archive.readme.${key}`, args);
  const lines = [
    say("title"),
    "",
    say(`holds.${archive.holds}`, { students: archive.students.length, day: made.day }),
    say("json", { format: archive.format, version: archive.version }),
    say("again"),
    "",
    say("keep"),
    say("rules"),
    "",
    `# ${say("how")}`,
    "",
    ...["csv", "guard", "units", "signs", "empty", "times"].map((key) => `- ${say(key)}`),
    "",
    `# ${say("left-out")}`,
    "",
    ...LEFT_OUT.map((key) => `- ${sayLeftOut(words, key, made.withoutPain)}`),
  ];
  for (const { name, columns, rows } of tables)
    lines.push(
      "",
      `# ${name}.csv`,
      "",
      `${words.say(`archive.table.${name}`)} ${say("rows", { count: rows.length })}`,
      "",
      ...columns.map((column) => `- ${column}: ${sayColumn(words, name, column)}`),
    );
  return `${lines.join("\n")}\n`;
}
