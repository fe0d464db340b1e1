import { FORGET_KEPT_HASH } from "../family/forget-kept";
import { configuredOrigins } from "./origin";

/** Headers that every answer bears, whatever it is; a family’s has one less (`standingHeaders`). */
export const STANDING_HEADERS: Readonly<Record<string, string>> = {
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cache-Control": "no-store",
  "X-Robots-Tag": "noindex, nofollow",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "X-Frame-Options": "DENY",
  "Permissions-Policy":
    "accelerometer=(), camera=(), display-capture=(), geolocation=(), gyroscope=(), magnetometer=(), microphone=(), payment=(), usb=()",
};

const OPENER = "Cross-Origin-Opener-Policy";

/**
 * The headers of an answer under `pathname`. What a family opens keeps the window that it is opened in: to be parted from
 * whatever opened it, it would have to be given another one, for which a phone takes a third of a second. Nothing is there to
 * be parted from, because nobody else knows its address, and it can be framed and read by nobody.
 */
export function standingHeaders(pathname: string): Readonly<Record<string, string>> {
  if (!pathname.startsWith("/family/")) return STANDING_HEADERS;
  return Object.fromEntries(Object.entries(STANDING_HEADERS).filter(([name]) => name !== OPENER));
}

/** A year (RFC 6797; OWASP ASVS 5.0, 3.4.1). */
const STRICT_SECONDS = 365 * 24 * 3600;

/** What is said besides to whoever comes by the public address when that is an https one: never come by http again. */
export function transportHeaders(host: string | undefined): Readonly<Record<string, string>> {
  const [first] = configuredOrigins();
  return host !== undefined && first === `https://${host.toLowerCase()}`
    ? { "Strict-Transport-Security": `max-age=${STRICT_SECONDS}` }
    : {};
}

/** What a page may load. In development the bundler evaluates what it sends, so there it may. */
export function contentPolicy(nonce: string, mode: "production" | "development"): string {
  const evaluate = mode === "development" ? " 'unsafe-eval'" : "";
  const socket = mode === "development" ? " ws:" : "";
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' ${FORGET_KEPT_HASH} 'strict-dynamic'${evaluate}`,
    // The charts' own positions are style attributes.
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data:",
    "font-src 'self'",
    `connect-src 'self'${socket}`,
    "object-src 'none'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
    "form-action 'self'",
  ].join("; ");
}

/** The policy of an answer that is no page: nothing in it may load or run. */
export const BARE_POLICY = [
  "default-src 'none'",
  "script-src 'none'",
  "style-src 'unsafe-inline'",
  "object-src 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
  "form-action 'self'",
].join("; ");
