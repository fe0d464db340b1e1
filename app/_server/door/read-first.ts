/** The files of styles that a page may be given whole: those of the build, by their own names. */
const STYLES = /^\/_next\/static\/(?:[\w-]+\/)*[\w.-]+\.css$/;
const STYLE_LINK = /<link rel="stylesheet" href="([^"]+)"[^>]*>/g;
const LATER = /<script src="[^"]+" async=""[^>]*><\/script>|<link rel="preload" as="script"[^>]*>/g;

/** Whether `href` is a file of styles of the build, and nothing that leads out of it. */
export function isBuiltStyle(href: string): boolean {
  return STYLES.test(href);
}

// A file of styles names its fonts from where it lies; from within a page they lie elsewhere.
function fromRoot(styles: string, href: string): string {
  return styles.replace(/url\((["']?)(?!["']?(?:data:|\/|#))([^"')]+)\1\)/g, (_whole, quote: string, name: string) => {
    const { pathname } = new URL(name, new URL(href, "http://here"));
    return `url(${quote}${pathname}${quote})`;
  });
}

/**
 * A page in which what is read comes first: its styles stand in it, and its scripts and their files of styles, which the scripts
 * look for, come after all that there is to read. On a slow line nothing is waited for but the page itself, and nothing shares
 * the line with it.
 *
 * @param page the framework's own page
 * @param stylesOf the text of a file of styles; null: it isn't there. Where one is missing the page is left as it is.
 */
export function readFirst(page: string, stylesOf: (href: string) => string | null): string {
  const [headEnd, bodyEnd] = [page.indexOf("</head>"), page.lastIndexOf("</body>")];
  if (headEnd < 0 || bodyEnd < headEnd) return page;
  const head = page.slice(0, headEnd);
  const links = [...head.matchAll(STYLE_LINK)];
  const texts = links.map(([, href = ""]) => {
    const text = isBuiltStyle(href) ? stylesOf(href) : null;
    return text === null || text.includes("</") ? null : fromRoot(text, href);
  });
  if (links.length === 0 || texts.includes(null)) return page;
  const later = [...links.map(([link]) => link), ...[...head.matchAll(LATER)].map(([each]) => each)].join("");
  const style = `<style>${texts.join("\n")}</style>`;
  let styled = false;
  const first = head.replace(STYLE_LINK, () => {
    if (styled) return "";
    styled = true;
    return style;
  });
  return `${first.replace(LATER, "")}${page.slice(headEnd, bodyEnd)}${later}${page.slice(bodyEnd)}`;
}
