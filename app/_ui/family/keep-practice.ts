import type { FamilyKeep } from "@/lib/report/family-practice-model";
import { sayLog, whyNotKept } from "./log-words";
import { dropAll, dropLog, dropPain, isPainKept, type KeptLog, keepLog, keepPain, keptLogs } from "./practice-store";
import { sendPractice, type Told } from "./send-practice";

/** What this phone keeps, and what was just said of it. */
export interface Kept {
  readonly said: string;
  readonly pain: "asked-again" | "no";
  /** `why`: the server would not save it; empty: it wasn't asked, or couldn't be reached. */
  readonly logs: readonly (KeptLog & { readonly why: string })[];
}

export const NOTHING_KEPT: Kept = { said: "", pain: "no", logs: [] };

/** Logs of one page that are being kept. */
export interface PracticeKeeper {
  send(): void;
  drop(key: string): void;
  endPain(): void;
  stop(): void;
}

/** The same said again within this time, in milliseconds, is a second press of the same finger. */
const SECOND_PRESS = 5000;

// `crypto.randomUUID` is there over TLS alone, which a house of its own may not have.
function newKey(): string {
  const hex = [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, "0"));
  hex[6] = `4${hex[6]?.[1]}`;
  hex[8] = `8${hex[8]?.[1]}`;
  return hex.join("").replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
}

// To the same address a browser would only move down the page.
function goTo(to: string): void {
  const next = new URL(to, location.href);
  const isHere = next.pathname + next.search === location.pathname + location.search;
  location.assign(next);
  if (isHere) location.reload();
}

function fieldsOf(form: HTMLFormElement, pressed: HTMLElement | null): URLSearchParams {
  const fields = new URLSearchParams();
  for (const [name, value] of new FormData(form)) fields.append(name, String(value).trim());
  if (pressed instanceof HTMLButtonElement && pressed.name !== "") fields.append(pressed.name, pressed.value);
  return fields;
}

function inputsOf(section: HTMLElement): readonly HTMLInputElement[] {
  return [...section.querySelectorAll<HTMLInputElement>("form[data-log] input:not([type=hidden])")];
}

function isTyped(section: HTMLElement): boolean {
  return inputsOf(section).some((each) => each.checked !== each.defaultChecked || each.value !== each.defaultValue);
}

/** Sends the forms of a section, keeps here what can't be sent, and sends it as soon as there is signal. */
export function startPracticeKeeper(
  section: HTMLElement,
  keep: FamilyKeep,
  tell: (kept: Kept) => void,
): PracticeKeeper {
  const { pageId, action, words } = keep;
  const why = new Map<string, string>();
  const ended = new AbortController();
  let said = "";
  let isBusy = false;
  /** Keys that stand for one log each: what is pressed afterwards on the same page is another one. */
  const used = new Set<string>();
  /** What was kept last, and when by the page's own running time. */
  let last = { what: "", at: Number.NEGATIVE_INFINITY };

  const show = (now: string = said): void => {
    said = now;
    const logs = keptLogs(pageId).map((log) => ({ ...log, why: why.get(log.key) ?? "" }));
    tell({ said, pain: isPainKept(pageId), logs });
  };

  // What the page shows is somebody's who may not see it any more.
  const die = (): void => {
    const lost = keptLogs(pageId).map((log) => sayLog(keep, log));
    const lines = [
      words["dead.next"],
      ...(isPainKept(pageId) === "no" ? [] : [words.pain]),
      ...(lost.length === 0 ? [] : [words.dead.replace("{said}", lost.join("; "))]),
    ];
    dropAll(pageId);
    ended.abort();
    const pieces = [words["dead.title"], ...lines].map((text, at) => {
      const piece = document.createElement(at === 0 ? "h1" : "p");
      piece.textContent = text;
      return piece;
    });
    document.querySelector("main")?.replaceChildren(...pieces);
  };

  const askPainAgain = (): void => {
    const yes = section.querySelector<HTMLInputElement>("form[data-log] input[name=hurts][value=yes]");
    if (yes) yes.checked = true;
  };

  const keepAway = (form: HTMLFormElement, fields: URLSearchParams): void => {
    const of = (name: string): string => fields.get(name) ?? "";
    if (of("hurts") === "yes") {
      keepPain(pageId);
      form.reset();
      askPainAgain();
      show("");
      return;
    }
    const log = { day: of("day"), minutes: of("minutes"), balls: of("balls"), felt: of("felt") };
    const wrong = whyNotKept(keep, log);
    if (wrong !== "") {
      show(wrong);
      return;
    }
    const what = JSON.stringify(log);
    const now = performance.now();
    const isTwice = what === last.what && now - last.at < SECOND_PRESS;
    last = { what, at: now };
    if (isTwice) {
      show(words.twice);
      return;
    }
    used.add(of("key"));
    const how = keepLog(pageId, { key: of("key"), ...log });
    form.reset();
    show(how === "kept" ? words.now : words.not);
  };

  const onTold = (told: Extract<Told, { kind: "told" }>, hurts: string | null): void => {
    // That something hurts is written down whatever is wrong with the rest.
    if (hurts === "yes" || told.outcome === "logged") dropPain(pageId);
    goTo(told.to);
  };

  const onSubmit = async (event: SubmitEvent): Promise<void> => {
    const form = event.target as HTMLFormElement;
    event.preventDefault();
    const fields = fieldsOf(form, event.submitter);
    const isLog = form.dataset.log !== undefined;
    if (isLog && !fields.has("hurts")) {
      show(words["hurts-missing"]);
      return;
    }
    if (isBusy) return;
    if (used.has(fields.get("key") ?? "")) fields.set("key", newKey());
    isBusy = true;
    show(words.sending);
    const told = await sendPractice(form.action, fields);
    isBusy = false;
    if (told.kind === "told") onTold(told, fields.get("hurts"));
    else if (told.kind === "dead") die();
    else if (isLog) keepAway(form, fields);
    else show(words.press);
  };

  const send = async (): Promise<void> => {
    if (isBusy) return;
    isBusy = true;
    show(words.sending);
    let sent = 0;
    let stopped: Told["kind"] = "told";
    for (const { key, day, minutes, balls, felt, hurts } of keptLogs(pageId)) {
      const fields = new URLSearchParams({ key, day, minutes, balls, felt, hurts, kept: "yes" });
      const told = await sendPractice(action, fields);
      stopped = told.kind;
      if (told.kind !== "told") break;
      if (told.outcome === "logged") {
        dropLog(pageId, key);
        sent += 1;
      } else why.set(key, words.refused.replace("{why}", told.why));
    }
    isBusy = false;
    if (stopped === "dead") die();
    else if (sent > 0 && stopped === "told" && !isTyped(section)) goTo(`?done=sent`);
    else show(stopped === "away" ? words.waits : sent > 0 ? words.sent : "");
  };

  const sendIfAny = (): void => {
    if (isPainKept(pageId) !== "no") askPainAgain();
    // What was refused is sent again by hand alone.
    if (navigator.onLine && keptLogs(pageId).some(({ key }) => !why.has(key))) void send();
    else show();
  };

  const { signal } = ended;
  section.addEventListener("submit", (event) => void onSubmit(event as SubmitEvent), { signal });
  window.addEventListener("online", sendIfAny, { signal });
  // Another tab kept or sent something.
  window.addEventListener("storage", () => show(), { signal });
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && sendIfAny(), {
    signal,
  });
  // From here on nothing that is pressed leads away before it is known to be sent.
  section.dataset.keeps = "yes";
  sendIfAny();
  return {
    send: () => void send(),
    drop: (key) => {
      dropLog(pageId, key);
      show("");
    },
    endPain: () => {
      dropPain(pageId);
      for (const form of section.querySelectorAll<HTMLFormElement>("form[data-log]")) form.reset();
      show("");
    },
    stop: () => ended.abort(),
  };
}
