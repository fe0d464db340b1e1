import { type KeptLogIn, readLogIns } from "@/db/read/log-ins";
import type { TableModel } from "@/lib/report/basic-model";
import type { PeoplePage } from "@/lib/report/people-model";
import { ABSOLUTE_SECONDS } from "../access/auth";
import type { LogIn } from "../access/log-in";
import { readClock } from "../clock";
import { type AskedForm, requireDraftId } from "../draft/draft-forms";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { Viewer } from "../gate";
import { sayMoment } from "../import/past-imports";
import { ACCOUNT_FORM, requireOwn } from "./account-desk";
import { browserName } from "./browser-name";
import { sayRoles } from "./say-roles";
import { sayWhy } from "./say-why";
import { peoplePart, smallForm } from "./small-form";

/** What the account's page is asked with: a kept form, and what became of a press. */
export interface AccountWish extends AskedForm {
  readonly why?: string;
  readonly done?: string;
}

function sayBrowser({ words }: Viewer, { userAgent, token }: KeptLogIn, own: LogIn): string {
  const { browser, system } = browserName(userAgent);
  const isOwn = token === own.token ? "yes" : "no";
  if (browser === "") return words.say("account.log-ins.unknown", { own: isOwn });
  return words.say("account.log-ins.one", {
    browser,
    system: system || words.say("account.log-ins.system"),
    own: isOwn,
  });
}

function logInsTable(viewer: Viewer, own: LogIn): TableModel {
  const { words, db } = viewer;
  const now = readClock();
  const oldest = now.getTime() - ABSOLUTE_SECONDS * 1000;
  const live = readLogIns(db, own.userId).filter((each) => each.expiresAt > now && each.createdAt.getTime() > oldest);
  return {
    caption: words.say("account.log-ins.caption", { count: live.length }),
    columns: [
      { label: words.say("account.log-ins.browser"), align: "start" },
      { label: words.say("account.log-ins.since"), align: "start" },
    ],
    rows: live.map((each) => ({
      cells: [sayBrowser(viewer, each, own), sayMoment(viewer, each.createdAt.toISOString())],
      tone: "plain",
    })),
  };
}

/** The viewer's own account: name and address, password, second step, log-ins. */
export function loadAccount(viewer: Viewer, logIn: LogIn, wish: AccountWish): PeoplePage {
  const { words } = viewer;
  const { draft, dropped, why, done } = wish;
  const draftId = requireDraftId("/account", draft, dropped, { why, done });
  const person = requireOwn(viewer);
  const kept = findFormDraft(viewer, ACCOUNT_FORM, draftId);
  const typed = (name: string): string | undefined => kept?.entries.find(([each]) => each === name)?.[1];
  const said = { refusal: kept?.refusal ?? "", errors: kept?.errors ?? {} };
  const names = smallForm(
    words,
    "account",
    [
      { name: "name", kind: "text", required: "yes", value: typed("name") ?? person.name },
      { name: "email", kind: "email", required: "yes", value: typed("email") ?? person.email },
    ],
    said,
  );
  const password = smallForm(
    words,
    "account.change",
    [
      { name: "current", kind: "password", required: "yes" },
      { name: "fresh", kind: "new-password", required: "yes" },
    ],
    sayWhy(words, why, { current: "current", fresh: "fresh" }),
  );
  const step = logIn.hasSecondStep ? "on" : "off";
  return {
    title: words.say("account.title"),
    documentTitle: words.say("document-title", { page: words.say("account.title") }),
    lede: words.say("account.lede", { roles: sayRoles(words, person.roles) }),
    back: null,
    notice: done !== undefined && words.has(`account.done.${done}`) ? words.say(`account.done.${done}`) : "",
    parts: [
      peoplePart(words.say("account.margin.you"), {
        forms: [
          { act: "save", form: withKeep(viewer, names, { form: ACCOUNT_FORM, studentId: "", draftId, dropped }) },
        ],
      }),
      peoplePart(words.say("account.margin.password"), {
        paragraphs: [words.say("account.change.explains")],
        forms: [{ act: "password", form: password }],
      }),
      peoplePart(words.say("account.margin.second-step"), {
        heading: words.say(`account.second-step.${step}`),
        paragraphs: [words.say("account.second-step.text")],
        links: [{ href: "/account/second-step", label: words.say(`account.second-step.open-${step}`) }],
      }),
      peoplePart(words.say("account.margin.log-ins"), {
        table: logInsTable(viewer, logIn),
        paragraphs: [words.say("account.log-ins.text")],
        forms: [{ act: "end", form: smallForm(words, "account.end", []) }],
      }),
    ],
  };
}
