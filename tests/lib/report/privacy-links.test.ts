import { expect, test } from "vitest";
import { buildPrivacyLinks } from "@/lib/report/privacy-links";
import { wordsFor } from "@/lib/words/catalogue";

test("a page about family and data links the six others, never itself", () => {
  const links = buildPrivacyLinks(wordsFor("en"), "s1", "consent");
  expect(links.map(({ href }) => href)).toEqual(
    ["tell", "family", "looked", "take-out", "handing-over", "erase"].map((page) => `/students/s1/${page}`),
  );
  expect(new Set(links.map(({ label }) => label)).size).toBe(6);
});
