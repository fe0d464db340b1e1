import { readFileSync } from "node:fs";
import type { IncomingMessage, ServerResponse } from "node:http";
import path from "node:path";
import { gzipSync } from "node:zlib";
import { callBack, setHeadersOf } from "./held-answer";
import { readFirst } from "./read-first";

/** A family's page. What is under `/family/open/` leads to one. */
const FAMILY_PAGE = /^\/family\/[^/?]+(?:\?|$)/;
const read = new Map<string, string>();

function stylesOf(href: string): string | null {
  const known = read.get(href);
  if (known !== undefined) return known;
  try {
    const text = readFileSync(path.join(process.cwd(), ".next", href.slice("/_next/".length)), "utf8");
    read.set(href, text);
    return text;
  } catch {
    // While it is built anew, and in development, the files lie elsewhere: the page goes as the framework made it.
    return null;
  }
}

function bytesOf(part: unknown, encoding: unknown): Buffer {
  if (typeof part === "string") return Buffer.from(part, typeof encoding === "string" ? (encoding as "utf8") : "utf8");
  return Buffer.from(part as Uint8Array);
}

/**
 * Holds a family's page back until it is whole and sends it in the order in which it is read (see `readFirst`). Whatever else
 * is answered there, a refusal or data of the framework's own scripts, goes as it is.
 */
export function sendReadFirst(request: IncomingMessage, response: ServerResponse): void {
  if (request.method !== "GET" || !FAMILY_PAGE.test(request.url ?? "") || request.headers.rsc !== undefined) return;
  const gzip = /\bgzip\b/.test(String(request.headers["accept-encoding"] ?? ""));
  // The framework would press it part by part; it is pressed once, whole.
  delete request.headers["accept-encoding"];
  const write = response.write.bind(response) as (...args: readonly unknown[]) => boolean;
  const end = response.end.bind(response) as (...args: readonly unknown[]) => ServerResponse;
  const writeHead = response.writeHead.bind(response) as (...args: readonly unknown[]) => ServerResponse;
  const flushHeaders = response.flushHeaders.bind(response);
  const parts: Buffer[] = [];
  /** Null: not known yet. */
  let held: boolean | null = null;

  const isHeld = (): boolean => {
    held ??=
      response.statusCode === 200 &&
      String(response.getHeader("content-type") ?? "").startsWith("text/html") &&
      response.getHeader("content-encoding") === undefined &&
      !response.headersSent;
    return held;
  };
  const take = ([part, encoding]: readonly unknown[]): void => {
    if (part !== undefined && part !== null && typeof part !== "function") parts.push(bytesOf(part, encoding));
  };
  response.writeHead = ((status: number, ...more: unknown[]) => {
    response.statusCode = status;
    if (held !== false && !response.headersSent) setHeadersOf(response, more);
    return isHeld() ? response : writeHead(status, ...more);
  }) as ServerResponse["writeHead"];
  response.flushHeaders = () => {
    if (!isHeld()) flushHeaders();
  };
  response.write = ((...args: unknown[]) => {
    if (!isHeld()) return write(...args);
    take(args);
    callBack(args);
    return true;
  }) as ServerResponse["write"];
  response.end = ((...args: unknown[]) => {
    if (!isHeld()) return end(...args);
    take(args);
    held = false;
    const page = Buffer.from(readFirst(Buffer.concat(parts).toString("utf8"), stylesOf));
    const body = gzip ? gzipSync(page) : page;
    for (const name of ["transfer-encoding", "etag"]) response.removeHeader(name);
    if (gzip) response.setHeader("content-encoding", "gzip");
    response.setHeader("vary", "Accept-Encoding");
    response.setHeader("content-length", body.length);
    callBack(args);
    return end(body);
  }) as ServerResponse["end"];
}
