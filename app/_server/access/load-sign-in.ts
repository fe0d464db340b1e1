import type { SignInPage } from "@/lib/report/entry-model";
import type { FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { type AcademyChoice, findAcademyDatabase } from "../database";
import { ownPath } from "../door/own-path";
import { DEMO_PASSWORD, DEMO_PEOPLE } from "./demo-people";
import { NOTHING_TYPED, signInForm } from "./entry-forms";

const NOTICES = new Set(["account", "password", "out"]);

function readyAccounts(words: Words, to: string): SignInPage["ready"] {
  return {
    margin: words.say("sign-in.demo.margin"),
    explains: words.say("sign-in.demo.explains", { password: DEMO_PASSWORD }),
    accounts: DEMO_PEOPLE.map(({ userId, name, email }) => ({
      name,
      submit: words.say("sign-in.demo.submit", { name }),
      explains: words.say(`sign-in.demo.${userId}`),
      hidden: [
        { name: "email", value: email },
        { name: "password", value: DEMO_PASSWORD },
        { name: "to", value: ownPath(to, "/") },
      ],
    })),
  };
}

/** The button that shows the other academy; sent to `/api/academy`. */
export function otherAcademy(words: Words, choice: AcademyChoice): FormModel {
  return {
    heading: words.say("settings.part.switch"),
    explains: words.say("settings.part.switch.text"),
    parts: [],
    grid: null,
    submit: words.say(`settings.see-${choice}`),
    refusal: "",
    hidden: [{ name: "choice", value: choice }],
  };
}

/** The page on which somebody logs in to an academy: the demo's ready accounts, or address and password. */
export async function loadSignIn(
  words: Words,
  choice: AcademyChoice,
  asked: { readonly to?: string | undefined; readonly new?: string | undefined },
): Promise<SignInPage> {
  const to = ownPath(asked.to ?? "", "/");
  const demo = choice === "demo";
  const other = await findAcademyDatabase(demo ? "own" : "demo");
  const notice = asked.new !== undefined && NOTICES.has(asked.new) ? words.say(`sign-in.notice.${asked.new}`) : "";
  return {
    product: words.say("product"),
    documentTitle: words.say("sign-in.heading"),
    form: demo ? null : signInForm(words, NOTHING_TYPED, to),
    ready: demo ? readyAccounts(words, to) : null,
    notice: notice === "" && to !== "/" ? words.say("sign-in.notice.again") : notice,
    start: demo && !other ? { href: "/start", label: words.say("frame.start-own") } : null,
    other: other ? otherAcademy(words, demo ? "own" : "demo") : null,
  };
}
