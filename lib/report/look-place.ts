import type { Words } from "@/lib/words/catalogue";

const RECORD = "/students/[studentId]";

/** Places that are called like another one, by their way behind the student. */
const LIKE: Readonly<Record<string, string>> = {
  "": "season",
  "family-links": "family",
  "[fundamental]": "fundamental",
  session: "sessions",
  "read-backs": "read-back",
  csv: "readings",
};

/** Places of their own among a student's sessions. */
const IN_SESSIONS: Readonly<Record<string, string>> = { new: "sessions-new", sheet: "sheet" };

function nameOf(place: string): string {
  const [first = "", second = ""] = place.split(" ");
  if (first === "npm") return place.slice("npm run ".length);
  const address = (first === "GET" ? second : first).replace(/^\/api(?=\/)/, "");
  const table = place.split(" ")[2];
  if (table !== undefined) return LIKE[table] ?? table;
  if (address === "/archive") return "academy-archive";
  if (!address.startsWith(RECORD)) return address.split("/")[1] ?? "";
  const [, part = "", next = ""] = address.slice(RECORD.length).split("/");
  return (part === "sessions" ? IN_SESSIONS[next] : undefined) ?? LIKE[part] ?? part;
}

/** What was looked at, in words; a place that nobody wrote words for, of another version say, is another page. */
export function sayLookPlace(words: Words, place: string): string {
  const key = `looked.place.${nameOf(place)}`;
  return words.say(words.has(key) ? key : "looked.place.other");
}
