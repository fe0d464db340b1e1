import { readFileSync } from "node:fs";

/** How mail leaves this machine. */
export interface MailServer {
  readonly host: string;
  readonly port: number;
  /** From the first byte; elsewise the connection is turned into one, or, on this machine alone, stays plain. */
  readonly tls: "from-start" | "must-upgrade" | "plain";
  readonly user: string;
  readonly password: string;
  /** The sender's address. */
  readonly from: string;
}

/** What the settings say about mail: nothing is sent, they can't be followed, or where to send it. */
export type MailSettings =
  | { readonly kind: "off" }
  | { readonly kind: "wrong"; readonly what: "server" | "from" }
  | { readonly kind: "on"; readonly server: MailServer };

const THIS_MACHINE = new Set(["localhost", "127.0.0.1", "[::1]"]);
const ADDRESS = /^[^\s@<>,;:"()[\]\\]+@[^\s@<>,;:"()[\]\\]+$/;
const PORTS = { "smtps:": 465, "smtp:": 587 } as const;

/**
 * Reads PROOFBAND_SMTP and PROOFBAND_MAIL_FROM. The first is the server's address with its password, or the path of a file
 * that holds it, so that the password stands in no list of processes.
 */
export function readMailSettings(): MailSettings {
  const stated = process.env.PROOFBAND_SMTP?.trim() ?? "";
  if (stated === "") return { kind: "off" };
  const from = process.env.PROOFBAND_MAIL_FROM?.trim() ?? "";
  if (!ADDRESS.test(from)) return { kind: "wrong", what: "from" };
  const url = parseUrl(/^smtps?:/i.test(stated) ? stated : readSecret(stated));
  if (url === null) return { kind: "wrong", what: "server" };
  const { hostname, port, protocol } = url;
  return {
    kind: "on",
    server: {
      host: hostname.replace(/^\[|\]$/g, ""),
      port: port === "" ? PORTS[protocol as keyof typeof PORTS] : Number(port),
      tls: protocol === "smtps:" ? "from-start" : THIS_MACHINE.has(hostname.toLowerCase()) ? "plain" : "must-upgrade",
      user: decodeURIComponent(url.username),
      password: decodeURIComponent(url.password),
      from,
    },
  };
}

function readSecret(file: string): string {
  try {
    return readFileSync(/* turbopackIgnore: true */ file, "utf8").trim();
  } catch {
    return "";
  }
}

function parseUrl(text: string): URL | null {
  try {
    const url = new URL(text);
    decodeURIComponent(url.username + url.password);
    return url.protocol in PORTS && url.hostname !== "" ? url : null;
  } catch {
    return null;
  }
}
