/** The event by which a button asks that a form be handed to a function on the server as it stands, and made anew. */
const HAND_OVER = "hand-over";

/** What takes a form as it stands. */
export type HandOver = (data: FormData) => void;

/** Asks whoever keeps a form to hand it over; `nobody`: the form isn't kept. */
export function askToHand(form: HTMLFormElement, hand: HandOver): "asked" | "nobody" {
  return form.dispatchEvent(new CustomEvent(HAND_OVER, { detail: hand, cancelable: true })) ? "nobody" : "asked";
}

interface Listeners {
  readonly onInput: (event: Event) => void;
  readonly onSubmit: (event: SubmitEvent) => void;
  readonly onHand: (hand: HandOver) => void;
  readonly onGoing: () => void;
  readonly onHidden: () => void;
  readonly onOnline: () => void;
  /** Back brings the page out of the browser's memory as it was left. */
  readonly onBack: () => void;
}

/** Listens to all that moves a form to be kept; what is returned ends it. */
export function listenTo(form: HTMLFormElement, listeners: Listeners): () => void {
  const { onInput, onSubmit, onHand, onGoing, onHidden, onOnline, onBack } = listeners;
  const ended = new AbortController();
  const { signal } = ended;
  form.addEventListener("input", onInput, { signal });
  form.addEventListener("change", onInput, { signal });
  // Before anybody else hears of it.
  form.addEventListener("submit", onSubmit, { capture: true, signal });
  form.addEventListener(
    HAND_OVER,
    (event) => {
      event.preventDefault();
      onHand((event as CustomEvent<HandOver>).detail);
    },
    { signal },
  );
  window.addEventListener("pagehide", onGoing, { signal });
  window.addEventListener("online", onOnline, { signal });
  window.addEventListener("pageshow", (event) => event.persisted && onBack(), { signal });
  document.addEventListener("visibilitychange", onHidden, { signal });
  return () => ended.abort();
}
