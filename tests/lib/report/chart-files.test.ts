import { expect, it } from "vitest";
import { buildChartFiles } from "@/lib/report/chart-files";
import { wordsFor } from "@/lib/words/catalogue";

it("a chart goes out in colour, in one colour and as a picture of the coloured one, each with its own words", () => {
  const files = buildChartFiles(wordsFor("en"), "/api/x/svg?club=long", "contact");
  expect(files.links.map((link) => link.href)).toEqual([
    "/api/x/svg?club=long",
    "/api/x/svg?club=long&look=one-colour",
  ]);
  expect(files.picture).toMatchObject({ href: "/api/x/svg?club=long", fileName: "contact.png" });
  expect(new Set([...files.links, files.picture].map((each) => each.label)).size).toBe(3);
});
