import { expect, it } from "vitest";
import { sendAgain } from "@/app/_server/door/send-again";
import { wordsFor } from "@/lib/words/catalogue";

// X7 without scripts: what was typed comes back in the answer to whoever was signed out meanwhile.

const words = wordsFor("en");
const ADDRESS = "http://127.0.0.1:3000/students/s1/practice?draft=d1&week=2";

function posted(
  fields: readonly (readonly [string, string | Blob])[],
  more: Readonly<Record<string, string>> = {},
  address = ADDRESS,
) {
  const body = new FormData();
  for (const [name, value] of fields) body.append(name, value);
  return new Request(address, { method: "POST", body, headers: more });
}

it("holds every field to the letter, and sends it to where it was sent", async () => {
  const page =
    (await sendAgain(
      words,
      posted([
        ["note", '</textarea><script>"&\n two'],
        ["$ACTION_ID_1", ""],
        ["note", "again"],
      ]),
    )) ?? "";
  expect(page).toContain(
    '<form method="post" enctype="multipart/form-data" action="/students/s1/practice?draft=d1&amp;week=2">',
  );
  expect(page).toMatch(
    /<textarea hidden name="note">\n&lt;\/textarea&gt;&lt;script&gt;&quot;&amp;\r?\n two<\/textarea>/,
  );
  expect(page).toContain('<textarea hidden name="note">\nagain</textarea>');
  expect(page).toContain('<textarea hidden name="$ACTION_ID_1">\n</textarea>');
  expect(page).toMatch(/nothing was saved.*target="_blank".*Send it again/s);
  expect(page).not.toContain("<script");
});

it.each([
  [
    "a password",
    posted([
      ["name", "x"],
      ["password", "secret"],
    ]),
  ],
  ["a new password", posted([["newPassword", "secret"]])],
  ["a code", posted([["code", "123456"]])],
  ["the secret of a link", posted([["token", "x"]])],
  ["a file", posted([["file", new Blob(["a,b"])]])],
  ["nothing", posted([])],
  ["what a page's own script sends", posted([["note", "x"]], { "next-action": "00" })],
  ["what is sent to a route", posted([["note", "x"]], {}, "http://127.0.0.1:3000/api/drafts")],
  ["a text", new Request(ADDRESS, { method: "POST", body: "note=x", headers: { "content-type": "text/plain" } })],
  [
    "half a form",
    new Request(ADDRESS, {
      method: "POST",
      body: "--x\r\nCont",
      headers: { "content-type": "multipart/form-data; boundary=x" },
    }),
  ],
  ["a question", new Request(ADDRESS)],
])("%s is handed back to nobody", async (_what, request) => {
  expect(await sendAgain(words, request)).toBeNull();
});
