import { createHmac, timingSafeEqual } from "node:crypto";
import type { FamilyLink } from "@/lib/domain/family-link";
import { installationSecret } from "../access/secret";
import { readClock } from "../clock";
import { checkHost } from "../door/reached";

// Over https a browser then takes it from this host alone; over http, on this machine, it would refuse the prefix.
function cookieName(pageId: string, transport: "http" | "https"): string {
  return `${transport === "https" ? "__Host-" : ""}proofband-family-${pageId}`;
}

/**
 * What a browser shows for a link: derived from the link and this installation's secret, so that it opens that one page, is not
 * the secret of the link's address, and opens nothing once the link has ended.
 */
export function familyProof({ id, tokenHash }: Pick<FamilyLink, "id" | "tokenHash">): string {
  return createHmac("sha256", installationSecret()).update(`family\n${id}\n${tokenHash}`).digest("base64url");
}

function transportOf(sent: Headers): "http" | "https" {
  return checkHost(sent).startsWith("https:") ? "https" : "http";
}

/** The cookie of a link, as a header line; one for each link, so that several live side by side on one phone. */
export function familyCookie(link: FamilyLink, sent: Headers): string {
  const transport = transportOf(sent);
  const seconds = Math.max(0, Math.floor((Date.parse(link.expiresAt) - readClock().getTime()) / 1000));
  const secure = transport === "https" ? "; Secure" : "";
  return `${cookieName(link.id, transport)}=${familyProof(link)}; Path=/; HttpOnly; SameSite=Lax; Max-Age=${seconds}${secure}`;
}

/** Whether a browser shows the cookie of a link; the time that it takes tells nothing of where they differ. */
export function showsProof(link: Pick<FamilyLink, "id" | "tokenHash">, pageId: string, sent: Headers): boolean {
  const name = cookieName(pageId, transportOf(sent));
  const shown = (sent.get("cookie") ?? "")
    .split(/; */)
    .filter((pair) => pair.startsWith(`${name}=`))
    .map((pair) => pair.slice(name.length + 1));
  const proof = Buffer.from(familyProof(link));
  const first = Buffer.from((shown[0] ?? "").padEnd(proof.length, " ").slice(0, proof.length));
  return timingSafeEqual(first, proof) && shown[0]?.length === proof.length;
}
