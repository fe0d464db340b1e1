import { vi } from "vitest";

/** A button of which its attributes count. */
export class FakeButton {
  readonly attributes = new Map<string, string>();
  setAttribute(name: string, value: string): void {
    this.attributes.set(name, value);
  }
  removeAttribute(name: string): void {
    this.attributes.delete(name);
  }
}

/** A form as a list of entries, with one button. */
export class FakeForm extends EventTarget {
  entries: [string, string][] = [];
  readonly button = new FakeButton();
  readonly elements = Object.assign([this.button], { namedItem: () => null });
  requestSubmit = vi.fn();
}
