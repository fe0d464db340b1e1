import type { KeepModel } from "@/lib/report/keep-model";
import { type Entries, forgetUnsent, storeUnsent } from "./browser-store";
import { changedNames, entriesOf, isTouched, putValues, sayDifferences, withValues } from "./form-entries";
import type { Keeping, Standing } from "./keeping";
import { type HandOver, listenTo } from "./listen-to-form";
import { type Sent, sendDraft, sendOnGoing } from "./send-draft";
import { showBusy } from "./show-busy";

/** Typing rests this long before it is kept, and goes on for no longer than this without; in milliseconds. */
const REST = 600;
const LONGEST = 1400;

/** A form that was sent is not sent again by a second press; after so long, in milliseconds, its sender may have lost the line. */
const SECOND_PRESS = 5000;

/** Waits between tries while the server can't be reached, in seconds; the last one is repeated. */
const WAITS = [2, 4, 8, 15, 30, 60];

/** Keeps a form on the server while somebody types into it, and holds it back from being sent until it is kept. */
export function startKeeping(form: HTMLFormElement, keep: KeepModel, tell: (standing: Standing) => void): Keeping {
  let version = keep.version;
  let settleVersion = keep.version;
  let turn = 0;
  let tries = 0;
  let passing = false;
  /** Ends a press that is under way; null: none is. Until then a press is a second one of the same. */
  let endPress: (() => void) | null = null;
  let stopped = false;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  /** When the first key that isn't kept was pressed; null: all is kept. */
  let since: number | null = null;
  let queue: Promise<unknown> = Promise.resolve();
  /** What the server holds of this window, or will be told anew when the page goes. */
  const isUnkept = keep.isOnDisk === "no" || isTouched(form, keep) === "touched";
  let told: Entries = isUnkept ? [] : entriesOf(form, keep);
  let isOnServer = keep.version > 0 && told.length > 0;
  /** Whether the form was sent as it stood: what the framework empties afterwards is nothing that somebody typed. */
  let isSent = false;
  /** What the page came with of two windows, until it is chosen from. */
  let pending = keep.both;

  const lead = (name: string, value: number | string): void => {
    const field = form.elements.namedItem(name);
    if (field instanceof HTMLInputElement) field.value = String(value);
  };
  // A page that Back brings out of the browser's memory is another window, though it is the same page.
  const writer = `${keep.writer}.${crypto.getRandomValues(new Uint32Array(1))[0]}`;
  lead("writer", writer);

  const nextTurn = (): number => {
    turn += 1;
    lead("turn", turn);
    return turn;
  };

  const retryLater = (): void => {
    clearTimeout(waiting);
    since ??= Date.now();
    waiting = setTimeout(keepNow, (WAITS[Math.min(tries, WAITS.length - 1)] ?? 60) * 1000);
    tries += 1;
  };

  const take = (answer: Sent, entries: Entries): void => {
    if (answer.kind === "kept" || answer.kind === "changed") {
      told = entries;
      isOnServer = true;
    }
    if (answer.kind === "kept") {
      version = answer.version;
      settleVersion = answer.version;
      tries = 0;
      lead("version", version);
      forgetUnsent(keep.draft);
      tell({ state: pending === null ? "kept" : "changed", said: answer.said, both: pending });
    } else if (answer.kind === "changed") {
      settleVersion = answer.version;
      const { words } = keep;
      const fields = sayDifferences(form, answer.differences, words);
      const both = { said: answer.said, settles: answer.settles, here: words.here, there: words.there, fields };
      forgetUnsent(keep.draft);
      tell({ state: "changed", said: answer.said, both });
    } else if (answer.kind === "unreachable") {
      const some = storeUnsent(keep, entries, new Date().toISOString());
      tell({ state: "unsent", said: some === "some" ? keep.words.unsent : keep.words.unsentNothing, both: null });
      retryLater();
    } else if (answer.kind === "signed-out") {
      storeUnsent(keep, entries, new Date().toISOString());
      tell({ state: "signed-out", said: answer.said, both: null });
      retryLater();
    } else if (answer.kind === "saved" || answer.kind === "refused") {
      tell({ state: answer.kind, said: answer.said, both: null });
      if (answer.kind === "refused" && answer.again === "later") retryLater();
    }
  };

  const keepAs = (entries: Entries, seen: () => number, settles: string): Promise<Sent> => {
    // With the entries, not when it is sent: what goes past the queue meanwhile is newer and has to stay.
    const ownTurn = nextTurn();
    const work = queue.then(async () => {
      const answer = await sendDraft(keep, {
        version: seen(),
        writer,
        turn: ownTurn,
        entries,
        settles,
        act: "keep",
      });
      if (!stopped) take(answer, entries);
      return answer;
    });
    queue = work;
    return work;
  };

  function keepNow(): Promise<Sent> {
    clearTimeout(waiting);
    since = null;
    return keepAs(entriesOf(form, keep), () => version, "");
  }

  const keepSoon = (): void => {
    const now = Date.now();
    since ??= now;
    clearTimeout(waiting);
    waiting = setTimeout(keepNow, Math.max(0, Math.min(REST, since + LONGEST - now)));
  };

  const onInput = (event: Event): void => {
    if ((event.target as Partial<HTMLInputElement> | null)?.name?.startsWith("pick.")) return;
    isSent = false;
    // What is typed under a press goes with it, or by itself when the page goes: never over what came of the press.
    if (endPress === null) keepSoon();
    else since ??= Date.now();
  };

  const restPress = (): void => {
    endPress?.();
    if (since !== null) keepSoon();
  };

  // What can't be saved has to stay in the form, so nothing is sent off before the server is known to listen.
  const press = (button: Element | null, go: () => void): void => {
    if (endPress !== null) return;
    const free = showBusy(form, button);
    const lost = setTimeout(restPress, SECOND_PRESS);
    const kept = keepNow();
    endPress = () => {
      endPress = null;
      clearTimeout(lost);
      free();
    };
    void kept.then((answer) => {
      // Another page stands in its place by now, with all that was kept: there it is pressed again.
      if (stopped) return;
      // What the server won't keep at all it refuses, when it is sent, in words of its own.
      if (answer.kind === "kept" || answer.kind === "saved" || (answer.kind === "refused" && answer.again === "no")) {
        told = entriesOf(form, keep);
        nextTurn();
        since = null;
        isSent = true;
        go();
        return;
      }
      if (answer.kind === "changed") restPress();
      else endPress?.();
      if (answer.kind === "unreachable") tell({ state: "unsent", said: keep.words.notSaved, both: null });
    });
  };
  const onSubmit = (event: SubmitEvent): void => {
    if (passing) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    const { submitter } = event;
    press(submitter, () => {
      passing = true;
      form.requestSubmit(submitter);
      passing = false;
    });
  };
  const onHand = (hand: HandOver): void => press(null, () => hand(new FormData(form)));

  const onGoing = (): void => {
    // What is on its way may not arrive, so it goes once more with what was typed since.
    const now = entriesOf(form, keep);
    const changed = changedNames(told, now);
    if (isSent || changed.length === 0) return;
    since = null;
    const some = isOnServer ? { entries: now.filter(([name]) => changed.includes(name)), changed } : { entries: now };
    const sending = { version, writer, turn: nextTurn(), settles: "", act: "keep", ...some } as const;
    if (sendOnGoing(keep, sending) === "too-much") storeUnsent(keep, now, new Date().toISOString());
  };
  const onHidden = (): void => {
    // Also when somebody comes back, from signing in again say.
    if (since !== null && endPress === null) void keepNow();
  };
  const onOnline = (): void => {
    if (since !== null && endPress === null) void keepNow();
  };

  if (isUnkept) {
    since = Date.now();
    waiting = setTimeout(keepNow, REST);
  }
  const unlisten = listenTo(form, {
    onInput,
    onSubmit,
    onHand,
    onGoing,
    onHidden,
    onOnline,
    onBack: restPress,
  });
  return {
    async put(values, settles) {
      clearTimeout(waiting);
      const waits = pending;
      if (settles !== "") pending = null;
      const answer = await keepAs(withValues(entriesOf(form, keep), values), () => settleVersion, settles);
      if (answer.kind !== "kept") pending = waits;
      else if (putValues(form, values) === "missing") location.reload();
    },
    state: () => (turn > 0 ? "begun" : "fresh"),
    stop() {
      onGoing();
      stopped = true;
      clearTimeout(waiting);
      unlisten();
    },
  };
}

/** Asks once whether the page is behind what is kept, as after a reload that was quicker than the last keep, or saved. */
export function lookUp(keep: KeepModel): Promise<Sent> {
  return sendDraft(keep, { version: keep.version, writer: "", turn: 0, entries: [], settles: "", act: "look" });
}
