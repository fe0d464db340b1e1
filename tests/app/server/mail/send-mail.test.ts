import { afterEach, describe, expect, it } from "vitest";
import type { MailServer } from "@/app/_server/mail/mail-settings";
import { sendMail } from "@/app/_server/mail/send-mail";
import { type Manner, startMailServer, type TinyMailServer } from "./tiny-mail-server";

const MAIL = { toName: "Bo", toAddress: "bo@range.example", subject: "A link", text: "Hello Bo,\n\nthe link\n" };
const started: TinyMailServer[] = [];
afterEach(async () => {
  await Promise.all(started.splice(0).map((each) => each.close()));
});

async function start(manner: Manner, more: Partial<MailServer> = {}) {
  const host = more.host ?? "127.0.0.1";
  const tiny = await startMailServer(manner, host);
  started.push(tiny);
  const server: MailServer = {
    ...{ host, port: tiny.port, tls: "plain", user: "", password: "", from: "films@range.example" },
    ...more,
  };
  return { tiny, server };
}

const headersOf = (mail: string) => mail.slice(0, mail.indexOf("\n\n"));

describe("a mail", () => {
  it("reaches the server as plain text to one person, after a log-in where one is stated", async () => {
    const { tiny, server } = await start("takes", { user: "kim", password: "secret" });
    expect(await sendMail(server, MAIL)).toEqual({ kind: "sent" });
    const login = Buffer.from("\0kim\0secret").toString("base64");
    expect(tiny.heard).toEqual(
      expect.arrayContaining([`AUTH PLAIN ${login}`, "MAIL FROM:<films@range.example>", "RCPT TO:<bo@range.example>"]),
    );
    expect(tiny.mails).toHaveLength(1);
    const [mail = ""] = tiny.mails;
    expect(headersOf(mail)).toMatch(/^From: Proofband <films@range\.example>$/m);
    expect(headersOf(mail)).toMatch(/^To: Bo <bo@range\.example>$/m);
    expect(headersOf(mail)).toMatch(/^Content-Type: text\/plain; charset=utf-8$/m);
    expect(mail.slice(mail.indexOf("\n\n")).trim()).toBe("Hello Bo,\n\nthe link");
  });

  it("no name, subject or address adds a header or somebody to receive it", async () => {
    const ends = ["\r\n", "\n", "\r", "\u2028", "\0", "\r\n\r\n"];
    for (const end of ends) {
      const { tiny, server } = await start("takes");
      const evil = `Bo${end}Bcc: eve@elsewhere.example${end}X-Evil: yes`;
      await sendMail(server, { ...MAIL, toName: evil, subject: evil });
      await sendMail(server, { ...MAIL, toAddress: `bo@range.example${end}RCPT TO:<eve@elsewhere.example>` });
      await sendMail(server, { ...MAIL, toAddress: "bo@range.example, eve@elsewhere.example" });
      expect(tiny.mails.length).toBeGreaterThan(0);
      for (const mail of tiny.mails) expect(headersOf(mail)).not.toMatch(/^(Bcc|X-Evil|RCPT)/im);
      const received = tiny.heard.filter((line) => /^RCPT/i.test(line));
      expect(
        received.filter((line) => line.includes("<eve@")),
        JSON.stringify(end),
      ).toEqual([]);
    }
  });

  it("a server that knows nobody of that name is a refusal; one that isn't there can't be spoken with", async () => {
    const { tiny, server } = await start("refuses");
    expect(await sendMail(server, MAIL)).toEqual({ kind: "failed", why: "refused" });
    await tiny.close();
    expect(await sendMail(server, MAIL)).toEqual({ kind: "failed", why: "unreachable" });
  });

  it("a server that says nothing is waited for so long and no longer", async () => {
    const { server } = await start("silent");
    const from = performance.now();
    expect(await sendMail(server, MAIL, 300)).toEqual({ kind: "failed", why: "unreachable" });
    expect(performance.now() - from).toBeLessThan(5000);
  });

  it("without TLS nothing is told to a server elsewhere: no password, no address", async () => {
    for (const tls of ["must-upgrade", "from-start"] as const) {
      // 127.0.0.2 is an address of this machine and none of its names: as good as elsewhere.
      const { tiny, server } = await start("takes", { host: "127.0.0.2", tls, user: "kim", password: "secret" });
      expect(await sendMail(server, MAIL, 3000)).toEqual({ kind: "failed", why: "unreachable" });
      expect(tiny.connections()).toBe(1);
      expect(tiny.heard.filter((line) => /AUTH|MAIL|RCPT|DATA/.test(line))).toEqual([]);
      expect(tiny.mails).toEqual([]);
    }
  });
});
