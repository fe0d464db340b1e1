import { type AccessToken, readAccessTokens } from "@/db/read/access-tokens";
import type { TextPage } from "@/lib/report/form-model";
import type { KeysPage } from "@/lib/report/key-model";
import { sayDay } from "@/lib/words/day-words";
import { linkTables } from "../archive/table-links";
import { dayIn } from "../clock";
import type { AskedForm } from "../draft/draft-forms";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { type Refused, submitOnce } from "../draft/submit-once";
import { keepOf } from "../draft/with-keep";
import type { Viewer } from "../gate";
import { type KeyMade, MOST_KEYS, makeKey, takeShownKey } from "./access-keys";
import { sayMoment } from "./past-imports";

/** What the page of keys is asked with. */
export interface KeysWish extends AskedForm {
  readonly made?: string;
}

/** The form of a key among those that are kept. */
const FORM = "key-form";

/** Makes a key from a form, once; a refused form is kept with what is wrong in it. */
export function makeKeyFrom(viewer: Viewer, data: FormData): Extract<KeyMade, { kind: "made" }> | Refused {
  return submitOnce<Extract<KeyMade, { kind: "made" }>>(viewer, FORM, data, () => {
    const made = makeKey(viewer, String(data.get("name") ?? ""));
    if (made.kind === "made") return made;
    return { kind: "refused", draftId: keepFormDraft(viewer, FORM, data, { name: sayProblem(viewer, made.kind) }, "") };
  });
}

/** The way from the settings to the keys. */
export function loadKeysDoor({ db, scope, words }: Viewer): TextPage["parts"][number] {
  const live = readAccessTokens(db, scope).filter((token) => token.revokedAt === null).length;
  return {
    margin: words.say("keys.door"),
    heading: words.say("keys.door.heading", { live }),
    paragraphs: [words.say("keys.door.text")],
    links: [{ href: "/settings/keys", label: words.say("keys.door.open") }],
  };
}

function cellsOf(viewer: Viewer, token: AccessToken): string[] {
  const { words, academy } = viewer;
  const revoked = token.revokedAt;
  return [
    token.name,
    sayMoment(viewer, token.createdAt),
    token.lastUsedAt === null ? words.say("keys.never") : sayMoment(viewer, token.lastUsedAt),
    revoked === null
      ? words.say("keys.live")
      : words.say("keys.revoked", { day: sayDay(words, dayIn(academy.zone, new Date(revoked)), "day-year") }),
  ];
}

function sayProblem({ words }: Viewer, problem: "no-name" | "too-many"): string {
  if (problem === "no-name") return words.say("keys.new.required");
  return words.say("keys.new.too-many", { limit: MOST_KEYS });
}

/** The form of a new key, kept while somebody types. */
function buildMake(viewer: Viewer, { draft: draftId = "", dropped }: KeysWish): KeysPage["make"] {
  const { words } = viewer;
  const draft = findFormDraft(viewer, FORM, draftId);
  const label = words.say("keys.new.label");
  const known = new Map([["name", { label, options: [] }]]);
  return {
    margin: words.say("keys.new.margin"),
    heading: words.say("keys.new.heading"),
    label,
    hint: words.say("keys.new.hint"),
    submit: words.say("keys.new.submit"),
    value: draft?.entries.find(([name]) => name === "name")?.[1] ?? "",
    error: draft?.errors.name ?? "",
    ...keepOf(viewer, { form: FORM, studentId: "", draftId, dropped }, [], known),
  };
}

/** The page of keys. A key that was just made is on it once. */
export function loadKeys(viewer: Viewer, wish: KeysWish): KeysPage {
  const { words, db, scope } = viewer;
  const tokens = readAccessTokens(db, scope);
  const shown = takeShownKey(viewer, wish.made);
  return linkTables(
    words,
    "keys",
    {},
    {
      title: words.say("keys.title"),
      lede: words.say("keys.lede"),
      back: { href: "/settings", label: words.say("keys.back") },
      shown: shown && {
        heading: words.say("keys.shown.heading", { name: shown.name }),
        text: words.say("keys.shown.text"),
        label: words.say("keys.shown.label"),
        key: shown.key,
        done: { href: "/settings/keys", label: words.say("keys.shown.done") },
      },
      margin: words.say("keys.margin"),
      empty: words.say("keys.none"),
      table:
        tokens.length === 0
          ? null
          : {
              caption: words.say("keys.caption"),
              columns: ["name", "made", "used", "state"].map((name) => ({
                label: words.say(`keys.${name}`),
                align: "start",
              })),
              rows: tokens.map((token) => ({
                tone: token.revokedAt === null ? "plain" : "quiet",
                cells: cellsOf(viewer, token),
              })),
            },
      revokeLabel: words.say("keys.revoke"),
      revokes: tokens.map(({ id, name, revokedAt }) =>
        revokedAt === null ? { id, says: words.say("keys.revoke-one", { name }) } : null,
      ),
      make: buildMake(viewer, wish),
    },
  );
}
