import type { MailServer } from "./mail-settings";

/** Nobody waits longer for a mail server. */
export const LONGEST_WAIT_MS = 10_000;
const MEANS_NO = /^5\d\d$/;
const LINE_ENDS = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu;

/** A mail of plain text to one person. */
export interface Mail {
  readonly toName: string;
  readonly toAddress: string;
  readonly subject: string;
  readonly text: string;
}

/** What became of a mail: the server took it, or refused it, or could not be spoken with in time. */
export type Sent = { readonly kind: "sent" } | { readonly kind: "failed"; readonly why: "refused" | "unreachable" };

/** Hands one mail to the mail server, in at most ten seconds. */
export async function sendMail(server: MailServer, mail: Mail, waitMs = LONGEST_WAIT_MS): Promise<Sent> {
  // An academy without a mail server never loads it.
  const { createTransport } = await import("nodemailer");
  const transport = createTransport({
    ...{ host: server.host, port: server.port },
    ...{ secure: server.tls === "from-start", requireTLS: server.tls === "must-upgrade" },
    ...(server.tls === "plain" ? { ignoreTLS: true } : {}),
    ...(server.user === "" ? {} : { auth: { user: server.user, pass: server.password } }),
    ...{ connectionTimeout: waitMs, greetingTimeout: waitMs, socketTimeout: waitMs, dnsTimeout: waitMs },
    ...{ disableFileAccess: true, disableUrlAccess: true, logger: false },
  });
  try {
    await transport.sendMail({
      from: { name: "Proofband", address: server.from },
      to: { name: oneLine(mail.toName), address: mail.toAddress },
      subject: oneLine(mail.subject),
      text: mail.text,
      signal: AbortSignal.timeout(waitMs),
    });
    return { kind: "sent" };
  } catch (error) {
    const code = String((error as { readonly responseCode?: unknown }).responseCode ?? "");
    return { kind: "failed", why: MEANS_NO.test(code) ? "refused" : "unreachable" };
  } finally {
    transport.close();
  }
}

// The library writes them as encoded words; a name never gets that far with the end of a line in it.
function oneLine(text: string): string {
  return text.replace(LINE_ENDS, " ").trim();
}
