import { gzipSync } from "node:zlib";

/** A script of a page and what it weighs on the line, in bytes of gzip. */
interface WeighedScript {
  readonly name: string;
  readonly bytes: number;
}

/** What a page's scripts weigh. */
export interface Weighed {
  readonly files: readonly WeighedScript[];
  /** The scripts that stand in the page itself: what the framework is handed of it. */
  readonly inline: number;
  /** The page's whole text. */
  readonly page: number;
}

const SIZE = (text: string | Buffer): number => gzipSync(text, { level: 6 }).byteLength;

/**
 * Every script that a page asks for at once or ahead, each gzipped by itself as it goes over the line.
 *
 * @param address of the server
 * @param html of the page
 */
export async function weighScripts(address: string, html: string): Promise<Weighed> {
  const asked = [...html.matchAll(/<(?:script|link)\b[^>]*?\b(?:src|href)="([^"]+\.js)[^"]*"/g)].map(
    (found) => found[1],
  );
  const files: WeighedScript[] = [];
  for (const name of new Set(asked)) {
    const answer = await fetch(`${address}${name}`);
    if (!answer.ok) throw new Error(`${name} answered ${answer.status}`);
    files.push({ name: name ?? "", bytes: SIZE(Buffer.from(await answer.arrayBuffer())) });
  }
  const inside = [...html.matchAll(/<script\b(?![^>]*\bsrc=)[^>]*>([\s\S]*?)<\/script>/g)].map((found) => found[1]);
  return { files, inline: SIZE(inside.join("")), page: SIZE(html) };
}

/** Bytes of files that one page asks for and another one doesn't. */
export function beyond(page: Weighed, empty: Weighed): number {
  const known = new Set(empty.files.map(({ name }) => name));
  return page.files.filter(({ name }) => !known.has(name)).reduce((sum, { bytes }) => sum + bytes, 0);
}

/** Bytes of all files of a page. */
export function sumOf({ files }: Weighed): number {
  return files.reduce((sum, { bytes }) => sum + bytes, 0);
}
