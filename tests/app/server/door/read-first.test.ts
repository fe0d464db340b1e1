import { describe, expect, it } from "vitest";
import { isBuiltStyle, readFirst } from "@/app/_server/door/read-first";

const LINK = (name: string) =>
  `<link rel="stylesheet" href="/_next/static/chunks/${name}.css" data-precedence="next"/>`;
const SCRIPT = (name: string) => `<script src="/_next/static/chunks/${name}.js" async="" nonce="x"></script>`;
const PRELOAD = `<link rel="preload" as="script" fetchPriority="low" href="/_next/static/chunks/c.js"/>`;
const HEAD = `<meta charset="utf-8"/>${LINK("a")}${LINK("b")}${PRELOAD}${SCRIPT("c")}<title>Page</title>`;
const BODY = `<h1>Read</h1><script nonce="x">go()</script>${SCRIPT("late")}`;
const PAGE = `<!DOCTYPE html><html lang="en"><head>${HEAD}</head><body>${BODY}</body></html>`;
const TEXTS: Readonly<Record<string, string>> = {
  "/_next/static/chunks/a.css": "@font-face{src:url(../media/f.woff2)}h1{color:red}",
  "/_next/static/chunks/b.css": "h1{color:tan;background:url(data:,x)}",
};
const stylesOf = (href: string) => TEXTS[href] ?? null;

describe("a page in which what is read comes first", () => {
  const sent = readFirst(PAGE, stylesOf);

  it("bears its styles in their order, where the first file of them was named", () => {
    const styles =
      "<style>@font-face{src:url(/_next/static/media/f.woff2)}h1{color:red}\nh1{color:tan;background:url(data:,x)}</style>";
    expect(sent).toContain(`<meta charset="utf-8"/>${styles}<title>Page</title></head>`);
  });

  it("loses no tag: files of styles and scripts follow all that there is to read, in their order", () => {
    expect(sent.endsWith(`${BODY}${LINK("a")}${LINK("b")}${PRELOAD}${SCRIPT("c")}</body></html>`)).toBe(true);
    const tags = (page: string) => (page.replace(/<\/?style[^<]*>?/g, "").match(/<[^>]+>/g) ?? []).sort();
    expect(tags(sent)).toEqual(tags(PAGE));
  });

  it("is left as it is where a file of styles is missing, leads out, would end the style, or the page is none", () => {
    expect(readFirst(PAGE, (href) => (href.endsWith("a.css") ? "h1{}" : null))).toBe(PAGE);
    expect(readFirst(PAGE, () => "</style><script>bad()</script>")).toBe(PAGE);
    const out = PAGE.replace("/_next/static/chunks/a.css", "/_next/static/../../secret.css");
    expect(readFirst(out, () => "h1{}")).toBe(out);
    for (const none of ["", "</body></head>", "<head></head><body></body>"])
      expect(readFirst(none, stylesOf)).toBe(none);
  });

  it("names of built files of styles only", () => {
    expect(isBuiltStyle("/_next/static/chunks/0a-b_c.css")).toBe(true);
    for (const href of [
      "/_next/static/../x.css",
      "/_next/static/chunks/x.js",
      "//elsewhere/_next/static/x.css",
      "/_next/static/chunks/x.css?y",
    ])
      expect(isBuiltStyle(href), href).toBe(false);
  });
});
