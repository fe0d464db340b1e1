import { unzipSync } from "fflate";
import { type AccessRow, MATRIX } from "@/app/_server/access/matrix";
import { expect, test } from "../e2e/watched";
import { type Asker, bringAskers, builtCases, type Case, may, WRENS } from "./access-askers";
import { askUntilHeard, atOnce } from "./at-once";
import { host } from "./demo-roles";
import type { Cell } from "./planted-columns";
import { PLANTED_DRAFT } from "./planted-rows";
import { type PlantedWord, plantedWords, plantWords, wordsIn } from "./planting";
import { sendRaw } from "./raw-request";

// A4: a word of its own stands in every private column; every page, file and stream is fetched as each role.

/** Who may be shown what of a student of Wren's, by cell. */
const ALLOWED: Readonly<Record<string, readonly Cell[]>> = {
  owl: ["person"],
  dove: ["name", "record", "person", "import"],
  wren: ["name", "record", "pain", "person", "import", "author"],
  finch: [],
  lark: [],
  linnet: ["name"],
};

/** What a family's own page holds of its own student, by column; whoever has another link, or one that has ended, has none. */
const FAMILY = "family, live";
const OF_FAMILY: readonly string[] = [
  ...["student.alias", "student.clubs", "drill_assignment.dose", "practice.who", "practice.pain", "event.place"],
  ...["family_link.label", "consent.given_by", "consent.withdrawn_by", "family_request.answer"],
  "family_request.settled_by",
];

function mayBeShown({ name, page }: Asker, address: string, { column, cell }: PlantedWord): boolean {
  // The form that asks where it hurts offers every place to every family.
  if (column === "event.place" && page !== undefined && address.startsWith(page)) return true;
  if (name === FAMILY) return page !== undefined && address.startsWith(page) && OF_FAMILY.includes(column);
  return (ALLOWED[name] ?? []).includes(cell) || (column === "user.email" && name === "lark");
}

const words = plantedWords();
let askers: readonly Asker[] = [];
let takeBack: () => void;
test.beforeAll(async () => {
  askers = await bringAskers();
  takeBack = plantWords();
});
test.afterAll(() => takeBack());

function textOf(type: string, bytes: Uint8Array): string {
  const decode = (each: Uint8Array): string => Buffer.from(each).toString("utf8");
  return type.includes("zip") ? Object.values(unzipSync(bytes)).map(decode).join("\n") : decode(bytes);
}

interface Shown {
  readonly words: ReadonlySet<string>;
  readonly broken: readonly string[];
  readonly asked: number;
}

/** The words that an address shows to an asker, as a page and as the stream that a page's own script asks for. */
async function shown({ address, row }: Case, asker: Asker): Promise<Shown> {
  const found = new Set<string>();
  const broken: string[] = [];
  let asked = 0;
  const ask = async (path: string, headers: Record<string, string>): Promise<string> => {
    const answer = await askUntilHeard(() => sendRaw("GET", path, { Host: host, cookie: asker.cookie, ...headers }));
    asked++;
    // An answer to too many requests shows no word, and proves nothing; only whoever tries links is always slowed.
    const isUnheard = answer.status === 429 && !row.includes("[token]");
    if (answer.status >= 500 || isUnheard) broken.push(`${asker.name}: ${path} ${answer.status}`);
    const text = `${textOf(String(answer.headers["content-type"]), answer.bytes)}\n${JSON.stringify(answer.headers)}`;
    for (const word of wordsIn(text)) found.add(word);
    return answer.headers.location ?? "";
  };
  await ask(address, {});
  if (!address.startsWith("/api/")) {
    const led = await ask(address, { RSC: "1" });
    if (led.includes("_rsc")) await ask(led.replace(`http://${host}`, ""), { RSC: "1" });
  }
  return { words: found, broken, asked };
}

test("A4: no page, file or stream shows anybody a private word beyond their cell", async () => {
  test.setTimeout(600_000);
  const beyond: string[] = [];
  const seen = new Map<string, Set<string>>();
  let asked = 0;
  const row = "/students/[studentId]/events/new";
  const begun: Case = { row, address: `/students/${WRENS}/events/new?draft=${PLANTED_DRAFT}`, student: WRENS };
  const all = [...builtCases(), begun].flatMap((one) => askers.map((asker) => ({ one, asker })));
  await atOnce(all, async ({ one, asker }) => {
    const answer = await shown(one, asker);
    asked += answer.asked;
    beyond.push(...answer.broken);
    for (const word of answer.words) {
      const planted = words.get(word);
      if (!planted) throw new Error(`nobody planted ${word}`);
      const { column } = planted;
      seen.set(column, (seen.get(column) ?? new Set()).add(asker.name));
      if (!mayBeShown(asker, one.address, planted)) beyond.push(`${asker.name}: ${one.address} shows ${column}`);
    }
  });
  // A test that shows nobody anything proves nothing: whoever may see a word is shown it somewhere.
  const unseen = [...words.values()].filter(({ column, cell }) => cell !== "nobody" && !seen.has(column));
  console.log(
    `A4: ${words.size} words, ${asked} answers as ${askers.length} roles; shown to nobody: ${unseen.map(({ column }) => column).join(", ")}`,
  );
  expect([...new Set(beyond)]).toEqual([]);
  for (const column of [
    "student.alias",
    "session.note",
    "swing.note",
    "event.note",
    "event.place",
    "practice.pain",
    "draft.body",
  ])
    expect([column, seen.has(column)]).toEqual([column, true]);
  expect(unseen.length).toBeLessThan(words.size / 3);
});

test("A4: addresses asked as each role are all that were built", () => {
  const cases = builtCases();
  const reached = new Set(cases.map(({ row }) => row));
  const left = Object.entries(MATRIX).filter(
    ([row, { of }]: [string, AccessRow]) =>
      of !== "key" && of !== "link" && (/^GET /.test(row) || !row.includes(" ")) && !reached.has(row as never),
  );
  expect(left.map(([row]) => row)).toEqual([]);
  const students = cases.filter(({ student }) => student !== null);
  expect(students.every((one) => askers.some((asker) => may(one, asker, one.student)))).toBe(true);
});
