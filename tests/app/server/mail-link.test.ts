import net from "node:net";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { invite } from "@/app/_server/people/invite-desk";
import { loadPeople } from "@/app/_server/people/load-people";
import { mailLink } from "@/app/_server/people/mail-link";
import { makePasswordLink, revokeLink } from "@/app/_server/people/people-desk";
import { updateClockSeen } from "@/db/write/keeping";
import { addTo, FRESH, form, join } from "./inviting";
import { type Manner, startMailServer, type TinyMailServer } from "./mail/tiny-mail-server";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";

const ORIGIN = "https://films.example";
const SET = ["PROOFBAND_SMTP", "PROOFBAND_MAIL_FROM", "PROOFBAND_ORIGIN"];

let academy: PeopleAcademy;
let ada: Viewer;
let server: TinyMailServer | null = null;
beforeEach(async () => {
  academy = await startPeopleAcademy();
  ada = academy.viewer(academy.ownerId);
});
afterEach(async () => {
  for (const name of SET) delete process.env[name];
  await server?.close();
  server = null;
  academy.remove();
  vi.restoreAllMocks();
});

async function stateServer(manner: Manner): Promise<TinyMailServer> {
  server = await startMailServer(manner);
  process.env.PROOFBAND_SMTP = `smtp://127.0.0.1:${server.port}`;
  process.env.PROOFBAND_MAIL_FROM = "films@range.example";
  process.env.PROOFBAND_ORIGIN = ORIGIN;
  return server;
}

function inviteBo(): string {
  const made = invite(ada, form({ name: "Bo", email: "bo@range.example", roles: ["coach"] }));
  return made.kind === "invited" ? made.id : "";
}

/** What the page shows of the link just made: its address, what is said of it, and whether it can be sent. */
function shown(made: string, mail?: string) {
  const part = loadPeople(ada, { made, mail }).parts[0];
  const line = part?.once?.lines[0] ?? "";
  return { line, offered: part?.forms.some(({ act }) => act === "mail"), said: part?.forms[0]?.form.refusal, part };
}

const textOf = (mail: string) => mail.slice(mail.indexOf("\n\n")).replace(/=\n/g, "").replace(/=3D/g, "=");

describe("a one-time link by mail", () => {
  it("is offered beside the link, goes to whom it is for, with who sent it and until when, and opens", async () => {
    const { mails, heard } = await stateServer("takes");
    addTo(ada, "Plover");
    const id = inviteBo();
    const { line, offered } = shown(id);
    expect([line.startsWith(`${ORIGIN}/join/`), offered]).toEqual([true, true]);
    expect(await mailLink(ada, id)).toEqual({ kind: "done" });
    expect(heard).toContain("RCPT TO:<bo@range.example>");
    const text = textOf(mails[0] ?? "");
    expect(text).toContain(`\n${line}\n`);
    expect(text).toContain("Ada invites you to work at");
    expect(text).toMatch(/opens once, until \d+ \w+ \d{4}/);
    expect(mails[0]).not.toContain("Plover");
    const came = await join(line.slice(`${ORIGIN}/join/`.length), FRESH);
    expect(came.status).toBe(303);
  });

  it("goes out once: pressed again, taken back, of somebody else's making or made up, nothing is sent, in words", async () => {
    const { mails } = await stateServer("takes");
    const id = inviteBo();
    shown(id);
    await academy.add({ userId: "dot", name: "Dot", roles: ["director"] });
    expect(await mailLink(academy.viewer("dot"), id)).toEqual({ kind: "refused", why: "gone" });
    expect([await mailLink(ada, id), await mailLink(ada, id)]).toEqual([
      { kind: "done" },
      { kind: "refused", why: "gone" },
    ]);
    expect(await mailLink(ada, "no-such-link")).toEqual({ kind: "refused", why: "gone" });
    const other = makePasswordLink(ada, "dot").made?.id ?? "";
    shown(other);
    revokeLink(ada, other);
    expect(await mailLink(ada, other)).toEqual({ kind: "refused", why: "gone" });
    expect(mails).toHaveLength(1);
    expect(loadPeople(ada, { mail: "gone" }).notice).toContain("This press sent nothing");
  });

  it("that had ended by a clock which has gone back since is not sent", async () => {
    const { mails } = await stateServer("takes");
    const id = inviteBo();
    shown(id);
    updateClockSeen(ada.db, ada.scope, new Date(Date.now() + 8 * 24 * 3_600_000).toISOString());
    expect(await mailLink(ada, id)).toEqual({ kind: "refused", why: "gone" });
    expect(mails).toEqual([]);
  });

  it("not sent, the link is not lost: the page shows it once more with why, and it can be tried again", async () => {
    const first = await stateServer("refuses");
    const id = inviteBo();
    const { line } = shown(id);
    expect(await mailLink(ada, id)).toEqual({ kind: "refused", why: "refused" });
    expect(shown(id, "refused")).toMatchObject({ line, offered: true, said: expect.stringContaining("did not take") });
    await first.close();
    expect(await mailLink(ada, id)).toEqual({ kind: "refused", why: "unreachable" });
    expect(shown(id, "unreachable")).toMatchObject({ line, said: expect.stringContaining("could not be spoken with") });
    await stateServer("takes");
    expect(await mailLink(ada, id)).toEqual({ kind: "done" });
    expect(shown(id).line).toBe("");
  });

  it("without the settings nothing is offered and no connection is opened; half of them is said in words", async () => {
    const connect = vi.spyOn(net.Socket.prototype, "connect");
    const id = inviteBo();
    const page = shown(id);
    expect([page.offered, page.part?.paragraphs.length]).toEqual([false, 1]);
    expect(await mailLink(ada, id)).toMatchObject({ kind: "refused" });
    for (const [settings, said] of [
      [{ PROOFBAND_SMTP: "smtp://127.0.0.1" }, "PROOFBAND_MAIL_FROM"],
      [{ PROOFBAND_SMTP: "nonsense", PROOFBAND_MAIL_FROM: "a@b.example" }, "PROOFBAND_SMTP"],
      [{ PROOFBAND_SMTP: "smtp://127.0.0.1", PROOFBAND_MAIL_FROM: "a@b.example" }, "PROOFBAND_ORIGIN"],
    ] as const) {
      Object.assign(process.env, settings);
      await academy.add({ userId: said, name: said, roles: ["coach"] });
      const made = makePasswordLink(ada, said).made?.id ?? "";
      const half = shown(made);
      expect([half.offered, half.part?.paragraphs.at(-1)]).toEqual([false, expect.stringContaining(said)]);
      expect(await mailLink(ada, made)).toMatchObject({ kind: "refused" });
    }
    expect(connect).not.toHaveBeenCalled();
  });
});
