import { expect, it } from "vitest";
import { beginAnswering, referenceHere } from "@/app/_server/door/answering";
import { sayRefusal } from "@/app/_server/door/refusal-log";

const line = (method: string, address: string, why = "foreign") =>
  sayRefusal({ reference: "K7QP-3MWX", status: 403, why, method, address });

it("a refusal is one line: when, reference, status, why, method, and the pattern of the address", () => {
  expect(line("GET", "/students/s01/hinge?club=iron")).toMatch(
    /^\d{4}-\d\d-\d\dT[\d:.]+Z refused K7QP-3MWX 403 foreign GET \/students\/\[studentId\]\/\[fundamental\]\n$/,
  );
  expect(line("POST", "/api/sign-in", "")).toMatch(/ 403 - POST \/api\/sign-in\n$/);
});

it.each([
  ["GET", "/students/Ari%20Smith/x/y/z"],
  ["GET", "/join/a-token-that-opens"],
  ["GET", "/no/such\nrefused FAKE-LINE 200"],
  ["G\nET", "/students?alias=Ari"],
  ["GET", "/%0aAri"],
  ["GET", "//elsewhere.invalid/Ari"],
])(
  "nothing of %j %j that names somebody, opens something or begins a line of its own is written down",
  (method, address) => {
    const said = line(method, address);
    expect(said.split("\n")).toHaveLength(2);
    expect(said).not.toMatch(/Ari|Smith|token-that|FAKE|elsewhere/);
  },
);

it("a reference is eight signs that spell nothing, one for a request, and another for the next (1,000 tried)", () => {
  const answering = beginAnswering();
  expect(referenceHere(answering)).toBe(referenceHere(answering));
  const made = new Set(Array.from({ length: 1000 }, () => referenceHere({ reference: null })));
  expect(made.size).toBe(1000);
  for (const each of made) expect(each).toMatch(/^[2-9B-DF-HJ-NP-RTV-XZ]{4}-[2-9B-DF-HJ-NP-RTV-XZ]{4}$/);
});
