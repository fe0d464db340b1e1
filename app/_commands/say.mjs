import { readFileSync } from "node:fs";

const file = new URL("../../lib/words/messages/en/commands.json", import.meta.url);
const messages = JSON.parse(readFileSync(file, "utf8"));

// Start and test speak before anything is installed, so the message library isn't there yet: plain {name} arguments only.
export function say(key, args = {}) {
  if (!Object.hasOwn(messages, key)) throw new Error(`no message is written for ${key}`);
  return messages[key].replace(/\{(\w+)\}/g, (whole, name) => (Object.hasOwn(args, name) ? String(args[name]) : whole));
}

export class Refusal extends Error {}

export function refuse(key, args) {
  return new Refusal(say(key, args));
}
