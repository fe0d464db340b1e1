import type { Difference } from "@/lib/report/keep-answer";
import type { BothField, KeepModel, KeepWords } from "@/lib/report/keep-model";
import type { Entries } from "./browser-store";

/** What stands in a form now, without the fields by which it is led. */
export function entriesOf(form: HTMLFormElement, { leading }: Pick<KeepModel, "leading">): Entries {
  return [...new FormData(form)].flatMap(([name, value]) =>
    typeof value === "string" && !leading.includes(name) && !name.startsWith("$") && !name.startsWith("pick.")
      ? [[name, value] as const]
      : [],
  );
}

/** The same with some fields' values replaced. */
export function withValues(entries: Entries, replaced: ReadonlyMap<string, readonly string[]>): Entries {
  return [
    ...entries.filter(([name]) => !replaced.has(name)),
    ...[...replaced].flatMap(([name, values]) => values.map((value) => [name, value] as const)),
  ];
}

/** Names of the fields that hold something else now than before, in the order of both. */
export function changedNames(before: Entries, now: Entries): readonly string[] {
  const valuesOf = (entries: Entries): Map<string, string> => {
    const values = new Map<string, string>();
    for (const [name, value] of entries) values.set(name, JSON.stringify([values.get(name), value]));
    return values;
  };
  const [old, fresh] = [valuesOf(before), valuesOf(now)];
  return [...new Set([...old.keys(), ...fresh.keys()])].filter((name) => old.get(name) !== fresh.get(name));
}

type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

function controlsOf(form: HTMLFormElement, name: string): Control[] {
  return [...form.elements].filter((each): each is Control => "name" in each && each.name === name);
}

/** Whether a field stands otherwise than the page came with it. */
function isChanged(control: Control): boolean {
  if (control instanceof HTMLSelectElement) {
    const options = [...control.options];
    return (
      options.some((option) => option.defaultSelected) && options.some((each) => each.selected !== each.defaultSelected)
    );
  }
  if (control instanceof HTMLInputElement && (control.type === "checkbox" || control.type === "radio"))
    return control.checked !== control.defaultChecked;
  return control.value !== control.defaultValue;
}

/** Whether one of some fields was filled in before anything listened. */
export function isTypedEarly(form: HTMLFormElement, names: (name: string) => boolean): boolean {
  const all = [...form.elements].filter((each): each is Control => "name" in each && "value" in each);
  return all.some((each) => names(each.name) && each.type !== "hidden" && isChanged(each));
}

/** Whether somebody typed before anything listened: a page is there sooner than its scripts. */
export function isTouched(form: HTMLFormElement, keep: Pick<KeepModel, "leading">): "touched" | "fresh" {
  const names = new Set(entriesOf(form, keep).map(([name]) => name));
  const typed = [...form.elements].filter(
    (each): each is Control =>
      "name" in each && "value" in each && names.has(String(each.name)) && "type" in each && each.type !== "hidden",
  );
  return typed.some(isChanged) ? "touched" : "fresh";
}

function labelOf(form: HTMLFormElement, name: string): string {
  const control = controlsOf(form, name)[0];
  if (!control) return name;
  const isChoice = control.type === "radio" || control.type === "checkbox";
  const legend = isChoice ? control.closest("fieldset")?.querySelector("legend") : null;
  const text = control.getAttribute("aria-label") ?? legend?.textContent ?? control.labels?.[0]?.textContent;
  return text?.trim() || name;
}

function saidValue(form: HTMLFormElement, name: string, value: string): string {
  for (const control of controlsOf(form, name)) {
    if (control instanceof HTMLSelectElement)
      return [...control.options].find((option) => option.value === value)?.text ?? value;
    const isChoice = control.type === "radio" || control.type === "checkbox";
    if (isChoice && control.value === value) return control.labels?.[0]?.textContent?.trim() || value;
  }
  return value;
}

/** Differences in the words of the page on which they are shown. */
export function sayDifferences(
  form: HTMLFormElement,
  differences: readonly Difference[],
  words: KeepWords,
): readonly BothField[] {
  const said = (name: string, values: readonly string[]): string =>
    values.map((value) => saidValue(form, name, value)).join(", ") || words.empty;
  return differences.map(({ name, here, there }) => ({
    name,
    label: labelOf(form, name),
    here: said(name, here),
    there: said(name, there),
    thereValues: there,
  }));
}

function setText(control: Control, value: string): void {
  const prototype = Object.getPrototypeOf(control) as object;
  // By the browser's own setter: a field that a script watches would else not hear of it.
  Object.getOwnPropertyDescriptor(prototype, "value")?.set?.call(control, value);
  control.dispatchEvent(new Event("input", { bubbles: true }));
}

/** Puts values into the fields of a page; `missing`: some have no field there, so that the page has to be made anew. */
export function putValues(form: HTMLFormElement, values: ReadonlyMap<string, readonly string[]>): "all" | "missing" {
  let put: "all" | "missing" = "all";
  for (const [name, wanted] of values) {
    const controls = controlsOf(form, name);
    if (controls.length === 0) put = "missing";
    for (const [at, control] of controls.entries()) {
      const isChoice = control instanceof HTMLInputElement && ["radio", "checkbox"].includes(control.type);
      if (!isChoice) setText(control, wanted[at] ?? "");
      else if (control.checked !== wanted.includes(control.value)) control.click();
    }
  }
  return put;
}
