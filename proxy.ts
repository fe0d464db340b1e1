import { type NextRequest, NextResponse } from "next/server";
import { type Meeting, meet } from "@/app/_server/access/meet";
import { checkDoor, checkOrigin, configuredOrigins, DOOR, METHODS } from "@/app/_server/door/origin";
import { refusalPage } from "@/app/_server/door/refusal-page";
import { BARE_POLICY, contentPolicy, STANDING_HEADERS } from "@/app/_server/door/security-headers";
import { refuseTooBig, statesTooMuch } from "@/app/_server/door/upload-limit";
import { wishIn } from "@/app/_server/viewer";
import { wordsFor } from "@/lib/words/catalogue";

const MODE = process.env.NODE_ENV === "development" ? "development" : "production";

function newNonce(): string {
  return Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString("base64");
}

function seal(response: NextResponse, policy: string): NextResponse {
  for (const [name, value] of Object.entries(STANDING_HEADERS)) response.headers.set(name, value);
  response.headers.set("Content-Security-Policy", policy);
  return response;
}

function refuse(request: NextRequest, kind: "foreign" | "method", address: string): NextResponse {
  const words = wordsFor(wishIn(request.cookies).locale ?? "en");
  const page = refusalPage(words, {
    title: words.say(`refusal.${kind}.title`),
    happened: words.say(`refusal.${kind}.happened`),
    next: words.say("refusal.open", { address }),
  });
  const response = new NextResponse(request.method === "HEAD" ? null : page, {
    status: kind === "method" ? 405 : 403,
    headers: { "Content-Type": "text/html; charset=utf-8", ...(kind === "method" && { Allow: METHODS.join(", ") }) },
  });
  return seal(response, BARE_POLICY);
}

function tooBig(request: NextRequest): NextResponse {
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
  if (met.kind === "refused") {
    const headers = { "Content-Type": "text/html; charset=utf-8" };
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
  const check = request.nextUrl.pathname.startsWith(DOOR)
    ? checkDoor(facts, sent.get("x-forwarded-for"), port)
    : checkOrigin(facts, origins);
  if (check.kind !== "ours") return refuse(request, check.kind, origins[0] ?? "");
  // What stands behind is handed a body cut off at the framework's limit, and would call it half a file.
  if (statesTooMuch(sent)) return seal(tooBig(request), BARE_POLICY);
  const policy = contentPolicy(newNonce(), MODE);
  const headers = withoutForwarding(sent, check.origin);
  // The renderer takes the nonce of its own scripts from here.
  headers.set("Content-Security-Policy", policy);
  const passed = { request: { headers } };
  // Nothing is served under this address, so that the whole page for what isn't there answers.
  const { pathname, search } = request.nextUrl;
  const wish = wishIn(request.cookies);
  const words = wordsFor(wish.locale ?? "en");
  const met = isInternal(pathname)
    ? ({ kind: "absent" } as const)
    : await meet({ method, pathname, search, headers }, wish, words).catch(() => NOT_MET);
  return seal(answer(met, request, passed), policy);
}
