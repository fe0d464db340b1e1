/** What is asked of a request before anything else looks at it. */
export type OriginCheck =
  | { readonly kind: "ours"; readonly origin: string }
  | { readonly kind: "foreign" }
  | { readonly kind: "method" };

/** The parts of a request by which it is judged. Forwarded-for headers are not among them: anyone can write them. */
export interface RequestFacts {
  readonly method: string;
  readonly host: string | null;
  readonly origin: string | null;
  readonly fetchSite: string | null;
  /** The action that it calls; null: none. */
  readonly action: string | null;
}

const READING = new Set(["GET", "HEAD"]);
const CHANGING = new Set(["POST"]);

/** Methods that some page or route answers. */
export const METHODS = [...READING, ...CHANGING];

/** An address of the web as somebody states it, without its path; null: it is none, for want of its scheme, say. */
export function parseOrigin(stated: string): string | null {
  if (!URL.canParse(stated)) return null;
  const { protocol, origin, username, password } = new URL(stated);
  return (protocol === "https:" || protocol === "http:") && username + password === "" ? origin : null;
}

/** The addresses under which this server is reached: loopback, and the public one when it was stated. */
export function ownOrigins(port: string, publicOrigin: string | undefined): string[] {
  const local = [`http://127.0.0.1:${port}`, `http://localhost:${port}`];
  if (!publicOrigin) return local;
  const stated = parseOrigin(publicOrigin);
  // Whoever serves or makes links has asked `wrongOrigin` before.
  if (stated === null) throw new Error("PROOFBAND_ORIGIN is no address of the web");
  return [stated, ...local];
}

/** What is stated as the public address and is none; null: nothing, or an address. Asked before anything is served. */
export function wrongOrigin(): string | null {
  const stated = process.env.PROOFBAND_ORIGIN;
  return stated && parseOrigin(stated) === null ? stated : null;
}

let read: { readonly port: string; readonly stated: string | undefined; readonly origins: string[] } | null = null;

/** The addresses under which this process is reached, taken apart once. */
export function configuredOrigins(): readonly string[] {
  const { PORT: port = "", PROOFBAND_ORIGIN: stated } = process.env;
  if (read === null || read.port !== port || read.stated !== stated)
    read = { port, stated, origins: ownOrigins(port || "3000", stated) };
  return read.origins;
}

/**
 * Whether a request came to one of our addresses and, when it would change something, from one of our pages. A request
 * without an origin, or with an opaque one, passes only when the browser says that it came from the same one.
 */
export function checkOrigin(request: RequestFacts, origins: readonly string[]): OriginCheck {
  const reached = origins.find((origin) => new URL(origin).host === request.host?.toLowerCase());
  if (reached === undefined) return { kind: "foreign" };
  if (READING.has(request.method)) {
    return request.action === null ? { kind: "ours", origin: reached } : { kind: "method" };
  }
  if (!CHANGING.has(request.method)) return { kind: "method" };
  // Under no-referrer a browser sends "null" with the plain forms of our own pages; a foreign page can’t write Sec-Fetch-Site.
  if (request.origin === null || request.origin === "null") {
    return request.fetchSite === "same-origin" ? { kind: "ours", origin: reached } : { kind: "foreign" };
  }
  return origins.includes(request.origin) ? { kind: "ours", origin: request.origin } : { kind: "foreign" };
}

/** Where other programs send files. */
export const DOOR = "/api/door/";

const LOOPBACK = new Set(["127.0.0.1", "::1", "::ffff:127.0.0.1"]);

/** Whether a host is this machine's own name for this server. */
export function isLocalHost(host: string | null, port: string): boolean {
  return ownOrigins(port, undefined).some((origin) => new URL(origin).host === host?.toLowerCase());
}

/**
 * Whether a request to the door comes from a program on this machine: to its own name, past no other server, and from no
 * page of a browser, which always says where a POST comes from. The key is asked for behind it. Until there are people to
 * log in, nobody from elsewhere is answered there, whatever public address is stated.
 *
 * @param forwardedFor addresses that the request came past, as the server itself or one before it wrote them down
 */
export function checkDoor(request: RequestFacts, forwardedFor: string | null, port: string): OriginCheck {
  const local = ownOrigins(port, undefined);
  const past = (forwardedFor ?? "").split(",").map((address) => address.trim());
  if (!past.every((address) => address === "" || LOOPBACK.has(address))) return { kind: "foreign" };
  const fromProgram = request.origin === null && request.fetchSite === null && request.action === null;
  if (!fromProgram || request.method !== "POST") return checkOrigin(request, local);
  const reached = local.find((origin) => new URL(origin).host === request.host?.toLowerCase());
  return reached === undefined ? { kind: "foreign" } : { kind: "ours", origin: reached };
}
