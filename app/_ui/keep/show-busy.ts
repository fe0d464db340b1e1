/**
 * Shows that a press is being worked at: the buttons of a form, and the pressed one wherever it stands, take no other
 * meanwhile.
 *
 * @returns frees them
 */
export function showBusy(form: HTMLFormElement, pressed: Element | null): () => void {
  const own = [...form.elements].filter((each) => each instanceof HTMLButtonElement);
  const buttons = new Set<Element>(pressed === null ? own : [...own, pressed]);
  // Not `disabled`: a pressed button would lose the keyboard.
  for (const each of buttons) each.setAttribute("aria-disabled", "true");
  return () => {
    for (const each of buttons) each.removeAttribute("aria-disabled");
  };
}
