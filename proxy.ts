import { type NextRequest, NextResponse } from "next/server";
import { type Meeting, meet } from "@/app/_server/access/meet";
import { noteWhy } from "@/app/_server/door/answering";
import { LANGUAGE_HEADER } from "@/app/_server/door/asked-language";
import { METHOD_HEADER } from "@/app/_server/door/asked-method";
import { holdBack } from "@/app/_server/door/flood";
import { checkDoor, checkOrigin, configuredOrigins, DOOR } from "@/app/_server/door/origin";
import { type OuterRefusal, refuseOutside } from "@/app/_server/door/refuse-outside";
import { BARE_POLICY, contentPolicy, standingHeaders } from "@/app/_server/door/security-headers";
import { sendAgain } from "@/app/_server/door/send-again";
import { refuseTooBig, statesTooMuch } from "@/app/_server/door/upload-limit";
import { wishIn } from "@/app/_server/viewer";
import { type Words, wordsFor } from "@/lib/words/catalogue";

const MODE = process.env.NODE_ENV === "development" ? "development" : "production";

const PAGE = "text/html; charset=utf-8";

function newNonce(): string {
  return Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString("base64");
}

function seal(request: NextRequest, response: NextResponse, policy: string): NextResponse {
  for (const [name, value] of Object.entries(standingHeaders(request.nextUrl.pathname)))
    response.headers.set(name, value);
  response.headers.set("Content-Security-Policy", policy);
  return response;
}

function refuse(request: NextRequest, words: Words, refusal: OuterRefusal): NextResponse {
  const { body, status, headers } = refuseOutside(words, request.nextUrl.pathname, refusal);
  return new NextResponse(request.method === "HEAD" ? null : body, { status, headers });
}

function tooBig(request: NextRequest): NextResponse {
  noteWhy("too-big");
  const { body, status, headers } = refuseTooBig(
    wordsFor(wishIn(request.cookies).locale ?? "en"),
    request.nextUrl.pathname,
  );
  return new NextResponse(body, { status, headers });
}

// Anyone can write them, and what stands behind would believe them.
function withoutForwarding(sent: Headers, origin: string): Headers {
  const headers = new Headers(sent);
  for (const name of [...headers.keys()]) {
    if (name === LANGUAGE_HEADER) headers.delete(name);
    if (name.startsWith("x-forwarded-") || name === "forwarded" || name === "x-real-ip") headers.delete(name);
  }
  const { host, protocol } = new URL(origin);
  headers.set("x-forwarded-host", host);
  headers.set("x-forwarded-proto", protocol.slice(0, -1));
  // Judged already; the framework would refuse the "null" of a plain form.
  if (headers.get("origin") === "null") headers.set("origin", origin);
  return headers;
}

// Pages that the framework keeps for itself; asked for by name, they would answer as failures.
function isInternal(pathname: string): boolean {
  return pathname.startsWith("/_") && !pathname.startsWith("/_next/");
}

// What can't be asked here, because the data can't be read, fails where the page is made, and says so.
const NOT_MET: Meeting = { kind: "pass", cookies: [] };

function answer(met: Meeting, request: NextRequest, passed: { request: { headers: Headers } }): NextResponse {
  if (met.kind === "absent") return NextResponse.rewrite(new URL("/absent", request.url), passed);
  if (met.kind === "sign-in") return NextResponse.redirect(new URL(met.href, request.url), 303);
  if (met.kind === "slow-down") return refuse(request, met.words, { kind: "flood", seconds: met.seconds });
  if (met.kind === "refused") {
    const headers = { "Content-Type": met.type ?? PAGE };
    return new NextResponse(request.method === "HEAD" ? null : met.body, { status: met.status, headers });
  }
  const onward = NextResponse.next(passed);
  for (const cookie of met.cookies) onward.headers.append("set-cookie", cookie);
  return onward;
}

/** The outermost door: every request passes, also for files and for what isn't there. */
export async function proxy(request: NextRequest): Promise<NextResponse> {
  const origins = configuredOrigins();
  const { headers: sent, method } = request;
  const facts = {
    method,
    host: sent.get("host"),
    origin: sent.get("origin"),
    fetchSite: sent.get("sec-fetch-site"),
    action: sent.get("next-action"),
  };
  const port = process.env.PORT || "3000";
  const { pathname, search } = request.nextUrl;
  const words = wordsFor(wishIn(request.cookies).locale ?? "en");
  const isDoor = pathname.startsWith(DOOR);
  const check = isDoor ? checkDoor(facts, sent.get("x-forwarded-for"), port) : checkOrigin(facts, origins);
  if (check.kind !== "ours") {
    const address = isDoor ? `http://127.0.0.1:${port}` : (origins[0] ?? "");
    return seal(request, refuse(request, words, { kind: check.kind, address }), BARE_POLICY);
  }
  // What stands behind is handed a body cut off at the framework's limit, and would call it half a file.
  if (statesTooMuch(sent, pathname)) return seal(request, tooBig(request), BARE_POLICY);
  const seconds = await holdBack(method, pathname, sent);
  if (seconds > 0) return seal(request, refuse(request, words, { kind: "flood", seconds }), BARE_POLICY);
  const policy = contentPolicy(newNonce(), MODE);
  const headers = withoutForwarding(sent, check.origin);
  // The renderer takes the nonce of its own scripts from here.
  headers.set("Content-Security-Policy", policy);
  headers.set(METHOD_HEADER, method);
  const passed = { request: { headers } };
  // Nothing is served under this address, so that the whole page for what isn't there answers.
  const wish = wishIn(request.cookies);
  const met = isInternal(pathname)
    ? ({ kind: "absent" } as const)
    : await meet({ method, pathname, search, headers }, wish, words).catch(() => NOT_MET);
  if (met.kind === "pass" && met.language !== undefined) headers.set(LANGUAGE_HEADER, met.language);
  // Who was signed out while typing finds all that was typed in the answer.
  const held = met.kind === "refused" && met.status === 401 ? await sendAgain(words, request) : null;
  if (held !== null)
    return seal(request, new NextResponse(held, { status: 401, headers: { "Content-Type": PAGE } }), BARE_POLICY);
  return seal(request, answer(met, request, passed), policy);
}
