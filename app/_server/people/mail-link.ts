import { readInvitations } from "@/db/read/invitations";
import { sayDay } from "@/lib/words/day-words";
import { dayIn } from "../clock";
import { configuredOrigins } from "../door/origin";
import type { Viewer } from "../gate";
import { latestInstant } from "../keeping/watch-clock";
import { readMailSettings } from "../mail/mail-settings";
import { sendMail } from "../mail/send-mail";
import { DONE, type Outcome, refused } from "./account-desk";
import { isOpen } from "./one-time-link";
import { type HeldLink, linkKey, mailKey } from "./people-desk";
import { holdOnce, takeHeld } from "./shown-once";

/** Whether a link can be sent by mail: only with a mail server, and an address that opens from elsewhere. */
export function mailOffer({ choice }: Viewer): "on" | "off" | "wrong-server" | "wrong-from" | "no-address" {
  const settings = readMailSettings();
  if (settings.kind === "off" || choice === "demo") return "off";
  if (settings.kind === "wrong") return `wrong-${settings.what}`;
  return process.env.PROOFBAND_ORIGIN ? "on" : "no-address";
}

/** A link as somebody opens it. */
export function linkAddress({ path }: HeldLink): string {
  return `${configuredOrigins()[0] ?? ""}${path}`;
}

/**
 * Sends a link that was just shown to whom it is for. Nothing about students stands in the mail. A link that was not sent is
 * held again, so that the page shows it once more.
 */
export async function mailLink(viewer: Viewer, id: string): Promise<Outcome> {
  const { db, words, academy } = viewer;
  const held = takeHeld<HeldLink>(mailKey(viewer, id));
  const link = readInvitations(db, academy.id).find((each) => each.id === id);
  const settings = readMailSettings();
  if (!held || !link || !isOpen(link, latestInstant(viewer))) return refused("gone");
  if (mailOffer(viewer) !== "on" || settings.kind !== "on") return refused(again(viewer, id, held, "off"));
  const facts = {
    ...{ name: link.name, who: viewer.name, academy: academy.name, link: linkAddress(held) },
    until: sayDay(words, dayIn(academy.zone, new Date(link.expiresAt)), "day-year"),
  };
  const sent = await sendMail(settings.server, {
    ...{ toName: link.name, toAddress: link.email },
    subject: words.say(`mail.subject.${held.kind}`, facts),
    text: words.say(`mail.text.${held.kind}`, facts),
  });
  return sent.kind === "sent" ? DONE : refused(again(viewer, id, held, sent.why));
}

function again(viewer: Viewer, id: string, held: HeldLink, why: string): string {
  holdOnce(linkKey(viewer, id), held);
  return why;
}
