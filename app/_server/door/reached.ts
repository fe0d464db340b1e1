import { headers } from "next/headers";
import { checkOrigin, configuredOrigins, type OriginCheck } from "./origin";

/** Asks again, where data are read, what the outermost door has asked: a door can be left open by mistake. */
export async function checkReached(): Promise<OriginCheck> {
  const sent = await headers();
  const origin = sent.get("origin");
  const method = origin === null ? "GET" : "POST";
  return checkOrigin({ method, host: sent.get("host"), origin, fetchSite: null, action: null }, configuredOrigins());
}

export async function isSecurelyReached(): Promise<boolean> {
  const check = await checkReached();
  return check.kind === "ours" && check.origin.startsWith("https:");
}

/** The own address under which a request came; the local one when it is none of ours, which the gate refuses besides. */
export function checkHost(sent: Headers): string {
  const host = sent.get("host")?.toLowerCase();
  const origins = configuredOrigins();
  return origins.find((origin) => new URL(origin).host === host) ?? origins.at(-1) ?? "";
}
